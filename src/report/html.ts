import {
  type Block,
  type Cell,
  type Column,
  cellText,
  cellTone,
  type Document,
  type List,
  type Table,
  type Tone,
} from './document.js';
import { STYLE } from './html-style.js';
import { plain } from './plain.js';
import { glued } from './wrap.js';

const ENTITIES: Record<string, string> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

const escaped = (text: string): string => glued(plain(text)).replace(/[&<>"']/g, (sign) => ENTITIES[sign]);

function classes(...names: (string | false | undefined)[]): string {
  const given = names.filter(Boolean);
  return given.length > 0 ? ` class="${given.join(' ')}"` : '';
}

function element(tag: string, text: string, tone?: Tone): string {
  return `<${tag}${classes(tone)}>${escaped(text)}</${tag}>`;
}

function cellHtml(cell: Cell, { align }: Column, first: boolean): string {
  const attributes = classes(align === 'right' && 'right', cellTone(cell));
  const text = escaped(cellText(cell));
  return first ? `<th scope="row"${attributes}>${text}</th>` : `<td${attributes}>${text}</td>`;
}

function tableHtml({ columns, rows }: Table): string {
  const head = columns.map(
    ({ title, align }) => `<th scope="col"${classes(align === 'right' && 'right')}>${escaped(title)}</th>`,
  );
  const body = rows.map(
    (row) => `<tr>${row.map((cell, index) => cellHtml(cell, columns[index], index === 0)).join('')}</tr>`,
  );
  return [
    '<div class="wide"><table>',
    `<thead><tr>${head.join('')}</tr></thead>`,
    `<tbody>${body.join('\n')}</tbody>`,
    '</table></div>',
  ].join('\n');
}

function listHtml({ items }: List): string {
  const entries = items.map(({ lead, tone, lines }) => {
    const head = lead ? `<p><strong${classes(tone)}>${escaped(lead)}</strong></p>` : '';
    return `<li>${head}${lines.map((line) => element('p', line)).join('')}</li>`;
  });
  return `<ul>\n${entries.join('\n')}\n</ul>`;
}

function blockHtml(block: Block): string {
  switch (block.kind) {
    case 'heading':
      return element(`h${block.level}`, block.text, block.tone);
    case 'paragraph':
      return element('p', block.text, block.tone);
    case 'table':
      return tableHtml(block);
    case 'list':
      return listHtml(block);
  }
}

/** One page that stands alone: no script, nothing fetched, fit to be printed and signed. */
export function htmlOf(document: Document): string {
  return [
    '<!doctype html>',
    '<html lang="en">',
    '<head>',
    '<meta charset="utf-8">',
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    `<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">`,
    `<title>${escaped(document.title)}</title>`,
    `<style>${STYLE}</style>`,
    '</head>',
    '<body>',
    ...document.blocks.map(blockHtml),
    '</body>',
    '</html>',
    '',
  ].join('\n');
}
