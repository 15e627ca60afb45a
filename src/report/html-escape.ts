import { plain } from './plain.js';
import { glued } from './wrap.js';

const ENTITIES: Record<string, string> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/** Keeps 1-1/2 on one line: a line that ends in `1-` is a figure misread. */
const joined = (text: string): string => text.replace(/(\d-)(?=\d+\/\d)/g, '$1\u2060');

/** Text that HTML and SVG must not read as tags. */
export const escaped = (text: string): string =>
  joined(glued(plain(text))).replace(/[&<>"']/g, (sign) => ENTITIES[sign]);
