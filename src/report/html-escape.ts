import { plain } from './plain.js';
import { glued } from './wrap.js';

const ENTITIES: Record<string, string> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/** Text that HTML and SVG must not read as tags. */
export const escaped = (text: string): string =>
  glued(plain(text)).replace(/[&<>"']/g, (sign) => ENTITIES[sign]);
