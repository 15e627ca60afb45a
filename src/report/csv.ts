import { plain } from './plain.js';

const RISKY = /[",;\t\r\n]|^\s|\s$/;

/** A cell that begins like a formula is led by a quote, so that no spreadsheet works it out. */
const harmless = (text: string): string =>
  /^\s*[=@\uff1d\uff20]|^\s*[+\uff0b\uff0d-](?![\d.]*$)/.test(text) ? `'${text}` : text;

function cellCsv(cell: string | number): string {
  const text = typeof cell === 'number' ? String(cell) : harmless(plain(cell));
  return RISKY.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/**
 * Rows as RFC 4180 writes them: commas, CRLF, quotes doubled. A byte-order mark is left off: what reads the file as
 * UTF-8 needs none.
 */
export const csvOf = (rows: readonly (readonly (string | number)[])[]): string =>
  rows.map((row) => `${row.map(cellCsv).join(',')}\r\n`).join('');
