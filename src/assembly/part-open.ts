/**
 * Velocity heads that a valve loses over those of the same valve wide open, from its table of openings. Between the
 * table's rows the logarithm of 1 + K runs straight; nearer shut than its last row, K grows as 1 / opening^2.
 */
export function partOpenCoefficient(table: readonly (readonly [number, number])[], open: number): number {
  const [lastOpen, lastK] = table[table.length - 1];
  if (open <= lastOpen) return lastK * (lastOpen / open) ** 2;
  const i = table.findIndex(([opening]) => opening <= open);
  if (i <= 0) return table[0][1];
  const [above, highK] = table[i - 1];
  const [below, lowK] = table[i];
  const part = (above - open) / (above - below);
  return Math.exp(Math.log1p(highK) + part * (Math.log1p(lowK) - Math.log1p(highK))) - 1;
}
