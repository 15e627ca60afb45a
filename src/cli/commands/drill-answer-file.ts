import { basename, extname } from 'node:path';
import { readBytes, readStandardBytes } from '../../layout/read-bytes.js';
import { plain } from '../../report/plain.js';
import { UsageFault } from '../usage-fault.js';

/** A file of answers, and what its first row says about the sheet that it answers. */
export interface AnswerFile {
  name: string;
  /** For a file that has no column for it: the file's name without its ending. */
  student: string;
  /** The answers, without the row about the sheet. */
  csv: string;
  code?: string;
  command?: string;
}

/** Spreadsheets write UTF-8 with and without a mark, UTF-16 with one, and the old Western code page. */
export function decoded(bytes: Uint8Array): string {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return new TextDecoder('utf-16le').decode(bytes);
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return new TextDecoder('utf-16be').decode(bytes);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder('windows-1252').decode(bytes);
  }
}

/** Cells of a row that has no line breaks inside; the first comma, semicolon or tab outside quotes parts it. */
function cellsOf(row: string): string[] {
  const bare = row.replace(/"(?:[^"]|"")*"/g, '');
  const separator = /[,;\t]/.exec(bare)?.[0] ?? ',';
  const cells: string[] = [''];
  let quoted = false;
  for (const sign of row) {
    if (sign === '"') quoted = !quoted;
    if (sign === separator && !quoted) cells.push('');
    else cells[cells.length - 1] += sign;
  }
  return cells.map((cell) => {
    const text = cell.trim();
    return text.startsWith('"') ? text.replace(/^"|"$/g, '').replaceAll('""', '"') : text;
  });
}

const SHEET = /^sheet\b\s*[:=]?\s*(.*)$/i;
const CODE = /^[0-9A-Z]{4}[- ]?[0-9A-Z]{4}$/i;

/** A line in which a spreadsheet says what parts its cells. */
const SEPARATOR = /^sep=.\r?\n/i;

/** Parts the row about the sheet from the answers; the row is there where its first cell begins with `sheet`. */
export function answerFile(name: string, text: string): AnswerFile {
  const whole = text.replace(/^\ufeff/, '');
  const student = basename(name, extname(name));
  const separator = SEPARATOR.exec(whole)?.[0] ?? '';
  const body = whole.slice(separator.length);
  const [all, row] = /^(?:[\s,;]*[\r\n])?([^\r\n]*)/.exec(body) ?? ['', ''];
  const [first, ...rest] = cellsOf(row);
  const cells = [SHEET.exec(first)?.[1] ?? '', ...rest];
  const code = cells.find((cell) => CODE.test(cell));
  const command = cells.find((cell) => /\bdrill\b/.test(cell));
  if (!SHEET.test(first) || (!code && !command)) return { name, student, csv: whole };
  const csv = separator + body.slice(all.length).replace(/^\r\n|^[\r\n]/, '');
  return { name, student, csv, ...(code && { code }), ...(command && { command }) };
}

/** Five hundred problems of eight hundred students would fit; common practice, no source. */
const MOST_BYTES = 5_000_000;
const BOUNDS = {
  most: MOST_BYTES,
  tooLarge: `it is larger than ${MOST_BYTES / 1e6} MB, so it is no class's answers; mark it in parts`,
  pipes: true,
};

export function readAnswerFile(name: string): AnswerFile {
  const read = name === '-' ? readStandardBytes(BOUNDS) : readBytes(name, BOUNDS);
  if ('fault' in read) throw new UsageFault(`cannot read ${plain(name)}: ${read.fault}`);
  return answerFile(name === '-' ? 'standard input' : name, decoded(read.bytes));
}
