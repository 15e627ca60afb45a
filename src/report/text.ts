import type { Blank, Block, Document, List } from './document.js';
import { type Paint, paintFor } from './paint.js';
import { plain } from './plain.js';
import { tableText } from './text-table.js';
import { wrap, wrapHanging } from './wrap.js';

export interface TextOptions {
  /** Columns of the terminal. */
  width?: number;
  colour?: boolean;
}

const USUAL_WIDTH = 80;
/** Longer lines tire the eye, however wide the terminal is. */
const WIDEST = 110;
const NARROWEST = 24;

const LETTERS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ';

/** `- `, ` 3. ` or `c) `, all of one list of one width. */
function markOf({ marks, items }: List, index: number): string {
  if (marks === 'letter') return `${LETTERS[index]}) `;
  if (marks !== 'number') return '- ';
  return `${String(index + 1).padStart(String(items.length).length)}. `;
}

function listText(list: List, width: number, paint: Paint): string[] {
  return list.items.flatMap(({ lead, tone, lines }, item) => {
    const all = lead ? [lead, ...lines] : lines;
    const mark = markOf(list, item);
    const under = ' '.repeat(mark.length);
    return all.flatMap((text, index) => {
      const wrapped = wrapHanging(plain(text), width, index === 0 ? mark : under, under);
      return lead && index === 0 ? wrapped.map((line) => paint.strong(paint.tone(tone, line))) : wrapped;
    });
  });
}

const WRITING = 16;

function blankText({ fields }: Blank, width: number): string[] {
  return fields.map(({ label, unit }) => {
    const rest = plain(label).length + 2 + (unit ? plain(unit).length + 1 : 0);
    const line = '_'.repeat(Math.max(3, Math.min(WRITING, width - rest)));
    return `${plain(label)}: ${line}${unit ? ` ${plain(unit)}` : ''}`;
  });
}

function blockText(block: Block, width: number, paint: Paint): string[] {
  switch (block.kind) {
    case 'heading': {
      const lines = wrap(plain(block.text), width).map((line) => paint.strong(paint.tone(block.tone, line)));
      return block.level === 1 ? [...lines, ''] : ['', ...lines];
    }
    case 'paragraph':
      return wrap(plain(block.text), width).map((line) => paint.tone(block.tone, line));
    case 'table':
      return tableText(block, width, paint);
    case 'list':
      return listText(block, width, paint);
    case 'blank':
      return blankText(block, width);
    case 'figure':
      return wrap(plain(block.words), width);
    case 'chart':
      return [];
    case 'group':
      return [
        ...(block.newPage ? ['', ''] : []),
        ...block.blocks.flatMap((each) => blockText(each, width, paint)),
      ];
  }
}

/** The document for a terminal: no line is wider than it, and no colour says what words do not. */
export function textOf(document: Document, options: TextOptions = {}): string {
  const width = Math.min(WIDEST, Math.max(NARROWEST, options.width ?? USUAL_WIDTH));
  const paint = paintFor(options.colour ?? false);
  const lines = document.blocks.flatMap((block) => blockText(block, width, paint));
  return `${lines.map((line) => line.trimEnd()).join('\n')}\n`;
}
