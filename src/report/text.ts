import type { Block, Document, List } from './document.js';
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

function listText({ items }: List, width: number, paint: Paint): string[] {
  return items.flatMap(({ lead, tone, lines }) => {
    const all = lead ? [lead, ...lines] : lines;
    return all.flatMap((text, index) => {
      const wrapped = wrapHanging(plain(text), width, index === 0 ? '- ' : '  ', '  ');
      return lead && index === 0 ? wrapped.map((line) => paint.strong(paint.tone(tone, line))) : wrapped;
    });
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
  }
}

/** The document for a terminal: no line is wider than it, and no colour says what words do not. */
export function textOf(document: Document, options: TextOptions = {}): string {
  const width = Math.min(WIDEST, Math.max(NARROWEST, options.width ?? USUAL_WIDTH));
  const paint = paintFor(options.colour ?? false);
  const lines = document.blocks.flatMap((block) => blockText(block, width, paint));
  return `${lines.map((line) => line.trimEnd()).join('\n')}\n`;
}
