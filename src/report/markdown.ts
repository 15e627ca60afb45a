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

const LETTERS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ';

/** The mark of an item and how far what belongs to it is set in. Markdown has no lists with letters. */
function markOf({ marks }: List, index: number): { mark: string; indent: string } {
  if (marks === 'letter') return { mark: `- **${LETTERS[index]})** `, indent: '  ' };
  const mark = marks === 'number' ? `${index + 1}. ` : '- ';
  return { mark, indent: ' '.repeat(mark.length) };
}

function listMarkdown(list: List): string {
  return list.items
    .map(({ lead, lines }, index) => {
      const [first, ...rest] = lines.map(escaped);
      const { mark, indent } = markOf(list, index);
      const head = lead ? `**${escaped(lead)}**${first ? `: ${first}` : ''}` : first;
      return [`${mark}${head}`, ...rest.map((line) => `${indent}- ${line}`)].join('\n');
    })
    .join('\n');
}

const WRITING = '_'.repeat(16);

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
    case 'blank':
      return block.fields
        .map(({ label, unit }) => `${escaped(label)}: ${escaped(WRITING)}${unit ? ` ${escaped(unit)}` : ''}`)
        .join('\n\n');
    case 'figure':
      return escaped(block.words);
    case 'chart':
      return '';
    case 'group':
      return [...(block.newPage ? ['---'] : []), ...written(block.blocks)].join('\n\n');
  }
}

/** What stands of blocks where a chart cannot be drawn. */
const written = (blocks: readonly Block[]): string[] =>
  blocks.filter(({ kind }) => kind !== 'chart').map(blockMarkdown);

/** The document as GitHub-flavoured Markdown. */
export function markdownOf(document: Document): string {
  return `${written(document.blocks).join('\n\n')}\n`;
}
