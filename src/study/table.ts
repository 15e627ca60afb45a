/** Reads a table of rising first figures straight between its rows; undefined outside them, where nothing is known. */
export function table(rows: readonly (readonly [number, number])[], at: number): number | undefined {
  const last = rows.length - 1;
  if (at < rows[0][0] || at > rows[last][0]) return undefined;
  const above = rows.findIndex(([x]) => x >= at);
  if (above === 0) return rows[0][1];
  const [x0, y0] = rows[above - 1];
  const [x1, y1] = rows[above];
  return y0 + ((at - x0) / (x1 - x0)) * (y1 - y0);
}
