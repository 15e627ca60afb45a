/** Rows of cells of a comma-, semicolon- or tab-separated text, quotes and a byte-order mark taken care of. */
export function readCsv(text: string): string[][] {
  const body = text.replace(/^\ufeff/, '');
  const separator = separatorOf(body);
  const rows: string[][] = [];
  let row: string[] = [];
  let cell = '';
  let quoted = false;
  const endCell = () => {
    row.push(cell);
    cell = '';
  };
  const endRow = () => {
    endCell();
    if (row.some((each) => each.trim() !== '')) rows.push(row);
    row = [];
  };
  for (let i = 0; i < body.length; i++) {
    const c = body[i];
    if (quoted) {
      if (c === '"' && body[i + 1] === '"') {
        cell += '"';
        i++;
      } else if (c === '"') quoted = false;
      else cell += c;
    } else if (c === '"' && cell.trim() === '') {
      quoted = true;
      cell = '';
    } else if (c === separator) endCell();
    else if (c === '\n' || c === '\r') {
      if (c === '\r' && body[i + 1] === '\n') i++;
      endRow();
    } else cell += c;
  }
  if (cell !== '' || row.length > 0) endRow();
  // A spreadsheet can state its separator in a line of its own.
  return rows.length > 0 && /^sep=/i.test(rows[0][0]) ? rows.slice(1) : rows;
}

/** Whichever of the three stands most often in the first line, outside of quotes. */
function separatorOf(text: string): string {
  const stated = /^sep=(.)/i.exec(text)?.[1];
  if (stated !== undefined) return stated;
  const first = (text.split(/\r?\n|\r/).find((line) => line.trim() !== '') ?? '').replace(/"[^"]*"/g, '');
  const counts = [',', ';', '\t'].map((each) => [each, first.split(each).length - 1] as const);
  return counts.reduce((most, each) => (each[1] > most[1] ? each : most))[0];
}
