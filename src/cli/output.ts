import type { Document } from '../report/document.js';
import { plain } from '../report/plain.js';
import type { Answer } from '../study/answer.js';
import type { CardAnswer } from '../study/card.js';
import type { ReportFormat, ReportOptions } from './options.js';
import { writeErr, writeOut } from './standard-output.js';
import type { Terminal } from './terminal.js';
import { UsageFault } from './usage-fault.js';

/** Columns of text that goes into a file. */
const FILE_WIDTH = 80;

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

/** Prints a card, with the day that it was made. */
export async function reportCard(card: CardAnswer, options: ReportOptions): Promise<void> {
  const { cardText } = await import('../report/card.js');
  const text = cardText(card, options.units, new Date().toISOString().slice(0, 10));
  await put(text, options.out, options.quiet);
}

/** To the file, and says so unless it is to be quiet; to standard output where there is none. */
export async function put(text: string, out: string | undefined, quiet: boolean): Promise<void> {
  if (out === undefined) {
    writeOut(text);
    return;
  }
  const { writeFile } = await import('./write-file.js');
  writeFile(out, text);
  if (!quiet) writeErr(`Wrote ${plain(out)}\n`);
}

/** Prints the answer where and how it is wanted. */
export async function report(answer: Answer, options: ReportOptions, terminal: Terminal): Promise<void> {
  await put(await reportText(answer, options, terminal), options.out, options.quiet);
}
