const RISKY = /[",;\t\r\n]|^\s|\s$/;

/** A cell that begins like a formula is led by a quote, so that no spreadsheet works it out. */
const harmless = (text: string): string => (/^[=@\t]|^[+-](?![\d.]*$)/.test(text) ? `'${text}` : text);

function cellCsv(cell: string | number): string {
  const text = typeof cell === 'number' ? String(cell) : harmless(cell);
  return RISKY.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/**
 * Rows as RFC 4180 writes them: commas, CRLF, quotes doubled. A byte-order mark is left off: what reads the file as
 * UTF-8 needs none.
 */
export const csvOf = (rows: readonly (readonly (string | number)[])[]): string =>
  rows.map((row) => `${row.map(cellCsv).join(',')}\r\n`).join('');
