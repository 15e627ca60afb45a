import { writeFileSync } from 'node:fs';
import type { Answer } from '../study/answer.js';
import type { CardAnswer } from '../study/card.js';
import type { ReportOptions } from './options.js';
import type { Terminal } from './terminal.js';
import { UsageFault } from './usage-fault.js';

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

/** Each look is loaded only when it is asked for. */
async function reportText(answer: Answer, options: ReportOptions, terminal: Terminal): Promise<string> {
  if (options.format === 'json') {
    const { toJson } = await import('../report/json.js');
    return `${JSON.stringify(toJson(answer, options.units), null, 2)}\n`;
  }
  const { answerDocument } = await import('../report/answer-document.js');
  const document = answerDocument(answer, options.units, options.quiet);
  switch (options.format) {
    case 'markdown':
      return (await import('../report/markdown.js')).markdownOf(document);
    case 'html':
      return (await import('../report/html.js')).htmlOf(document);
    case 'card':
      throw new UsageFault('a card is of a lay: flow and advance have one');
    case 'text': {
      const { textOf } = await import('../report/text.js');
      const look = options.out ? { width: FILE_WIDTH, colour: terminal.flag === true } : terminal.out;
      return textOf(document, look);
    }
  }
}

function writeTo(file: string, text: string): void {
  try {
    writeFileSync(file, text);
  } catch (error) {
    const { code = 'unknown error' } = error as NodeJS.ErrnoException;
    throw new UsageFault(`cannot write ${file}: ${WHY_NOT[code] ?? code}`);
  }
}

/** Prints the answer where and how it is wanted. */
export async function report(answer: Answer, options: ReportOptions, terminal: Terminal): Promise<void> {
  put(await reportText(answer, options, terminal), options);
}

/** Prints a card, with the day that it was made. */
export async function reportCard(card: CardAnswer, options: ReportOptions): Promise<void> {
  const { cardText } = await import('../report/card.js');
  put(cardText(card, options.units, new Date().toISOString().slice(0, 10)), options);
}

function put(text: string, options: ReportOptions): void {
  if (options.out === undefined) {
    process.stdout.write(text);
    return;
  }
  writeTo(options.out, text);
  if (!options.quiet) process.stderr.write(`Wrote ${options.out}\n`);
}
