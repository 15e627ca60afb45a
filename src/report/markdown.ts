import { type Block, type Cell, cellText, type Document, type List, type Table } from './document.js';
import { plain } from './plain.js';

/** Text that Markdown must not read as marks, and HTML must not read as tags. */
function escaped(text: string): string {
  return plain(text)
    .replace(/&/g, '&amp;')
    .replace(/</g, '&lt;')
    .replace(/[\\`*_[\]|~]/g, '\\$&')
    .replace(/^(\s*)([#>+-]|\d+\.)(?=\s)/, '$1\\$2');
}

function tableMarkdown({ columns, rows }: Table): string {
  const line = (cells: string[]) => `| ${cells.join(' | ')} |`;
  return [
    line(columns.map(({ title }) => escaped(title))),
    line(columns.map(({ align }) => (align === 'right' ? '--:' : '---'))),
    ...rows.map((row: Cell[]) => line(row.map((cell) => escaped(cellText(cell))))),
  ].join('\n');
}

function listMarkdown({ items }: List): string {
  return items
    .map(({ lead, lines }) => {
      const [first, ...rest] = lines.map(escaped);
      const head = lead ? `**${escaped(lead)}**: ${first}` : first;
      return [`- ${head}`, ...rest.map((line) => `  - ${line}`)].join('\n');
    })
    .join('\n');
}

function blockMarkdown(block: Block): string {
  switch (block.kind) {
    case 'heading':
      return `${'#'.repeat(block.level)} ${escaped(block.text)}`;
    case 'paragraph':
      return escaped(block.text);
    case 'table':
      return tableMarkdown(block);
    case 'list':
      return listMarkdown(block);
  }
}

/** The document as GitHub-flavoured Markdown. */
export function markdownOf(document: Document): string {
  return `${document.blocks.map(blockMarkdown).join('\n\n')}\n`;
}
