/** A cell of a comma-, semicolon- or tab-separated text, and where it stands in it. */
export interface CsvCell {
  text: string;
  /** Offsets of what is written in it, quotes and all, in the text. */
  from: number;
  to: number;
}

const SEPARATORS = [';', '\t', ','];

/** The separator of a text: the one that most of its lines have, semicolons first, since decimal commas come with those. */
export function separatorOf(text: string): string {
  const lines = text.split('\n').filter((line) => line.trim() !== '' && !line.startsWith('#'));
  const count = (separator: string) => lines.filter((line) => line.includes(separator)).length;
  const counts = SEPARATORS.map(count);
  return SEPARATORS[counts.indexOf(Math.max(...counts))];
}

/** Rows of cells; blank lines and lines that start with # are left out. Never throws. */
export function csvRows(text: string, separator = separatorOf(text)): CsvCell[][] {
  const rows: CsvCell[][] = [];
  // A quoted cell, or one up to the next separator, with what ends it.
  const cell = new RegExp(
    `[ \\ufeff]*(?:"((?:[^"]|"")*)"[^${separator}\\r\\n]*|([^${separator}\\r\\n]*))(${separator}|\\r?\\n|$)`,
    'y',
  );
  let row: CsvCell[] = [];
  while (cell.lastIndex < text.length) {
    const start = cell.lastIndex;
    if (row.length === 0 && text[start] === '#') {
      const end = text.indexOf('\n', start);
      if (end < 0) break;
      cell.lastIndex = end + 1;
      continue;
    }
    const found = cell.exec(text);
    // A lone carriage return is the one thing that no cell may hold.
    if (found === null) {
      cell.lastIndex = start + 1;
      continue;
    }
    const [whole, quoted, bare = '', end] = found;
    const written = whole.slice(0, whole.length - end.length);
    const from = start + (written.length - written.trimStart().length);
    row.push({
      text: quoted === undefined ? bare.trim() : quoted.replaceAll('""', '"').trim(),
      from,
      to: Math.max(from, start + written.trimEnd().length),
    });
    if (end !== separator) {
      if (row.some((each) => each.text !== '')) rows.push(row);
      row = [];
    }
  }
  if (row.some((each) => each.text !== '')) rows.push(row);
  return rows;
}
