import { writeFileSync } from 'node:fs';
import type { Document } from '../report/document.js';
import type { Answer } from '../study/answer.js';
import type { CardAnswer } from '../study/card.js';
import type { ReportFormat, ReportOptions } from './options.js';
import type { Terminal } from './terminal.js';
import { UsageFault } from './usage-fault.js';

/** Columns of text that goes into a file. */
const FILE_WIDTH = 80;

const WHY_NOT: Record<string, string> = {
  ENOENT: 'its folder does not exist',
  EACCES: 'it may not be written',
  EPERM: 'it may not be written',
  EISDIR: 'it is a folder',
  ENOTDIR: 'a part of its path is no folder',
  ENOSPC: 'the disk is full',
  EROFS: 'the disk is read-only',
};

export const jsonText = (tree: unknown): string => `${JSON.stringify(tree, null, 2)}\n`;

/** A document in one of the looks that are made for people; each is loaded only when it is asked for. */
export async function documentText(
  document: Document,
  format: Exclude<ReportFormat, 'json' | 'csv'>,
  out: string | undefined,
  terminal: Terminal,
): Promise<string> {
  switch (format) {
    case 'markdown':
      return (await import('../report/markdown.js')).markdownOf(document);
    case 'html':
      return (await import('../report/html.js')).htmlOf(document);
    case 'card':
      throw new UsageFault('a card is of a lay: flow and advance have one');
    case 'text': {
      const { textOf } = await import('../report/text.js');
      return textOf(document, out ? { width: FILE_WIDTH, colour: terminal.flag === true } : terminal.out);
    }
  }
}

async function reportText(answer: Answer, options: ReportOptions, terminal: Terminal): Promise<string> {
  if (options.format === 'json') {
    const { toJson } = await import('../report/json.js');
    return jsonText(toJson(answer, options.units));
  }
  if (options.format === 'csv') {
    throw new UsageFault(`${answer.question} has no CSV: take --format json, text, markdown or html`);
  }
  const { answerDocument } = await import('../report/answer-document.js');
  const document = answerDocument(answer, options.units, options.quiet);
  return documentText(document, options.format, options.out, terminal);
}

function writeTo(file: string, text: string): void {
  try {
    writeFileSync(file, text);
  } catch (error) {
    const { code = 'unknown error' } = error as NodeJS.ErrnoException;
    throw new UsageFault(`cannot write ${file}: ${WHY_NOT[code] ?? code}`);
  }
}

/** Prints a card, with the day that it was made. */
export async function reportCard(card: CardAnswer, options: ReportOptions): Promise<void> {
  const { cardText } = await import('../report/card.js');
  const text = cardText(card, options.units, new Date().toISOString().slice(0, 10));
  put(text, options.out, options.quiet);
}

/** To the file, and says so unless it is to be quiet; to standard output where there is none. */
export function put(text: string, out: string | undefined, quiet: boolean): void {
  if (out === undefined) {
    process.stdout.write(text);
    return;
  }
  writeTo(out, text);
  if (!quiet) process.stderr.write(`Wrote ${out}\n`);
}

/** Prints the answer where and how it is wanted. */
export async function report(answer: Answer, options: ReportOptions, terminal: Terminal): Promise<void> {
  put(await reportText(answer, options, terminal), options.out, options.quiet);
}
