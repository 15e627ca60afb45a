import { requireWithin } from './range.js';

/** Part of its travel that a valve stands open, and the velocity heads it then loses over those of the same valve wide open. */
export type PartOpenRow = readonly [opening: number, lossCoefficient: number];

/**
 * Velocity heads that a valve part open loses over those of the same valve wide open.
 *
 * Formula: between the table's rows ln(1 + K) runs straight; nearer shut than its last row K grows as 1/opening^2; infinite when shut
 * Range: opening 0 to 1, the part of a stem's travel or of a quarter turn; table from wide open down, K growing. Turbulent flow, no
 * cavitation. Real valves of one kind differ by a factor of two or more.
 * Errors: RangeError where the opening is out of range or the table is empty.
 * Source: the table brings its own; how its rows are joined is common practice, no source.
 * @param table rows of opening and K, from wide open down [1, 1]
 * @param opening part of the travel that it stands open [1]
 * @returns K over that of the valve wide open, on its bore [1]
 * @example partOpenCoefficient([[1, 0], [0.75, 0.73], [0.5, 4.33], [0.25, 23.83]], 0.5) // => 4.33
 */
export function partOpenCoefficient(table: readonly PartOpenRow[], opening: number): number {
  requireWithin('opening', opening, 0, 1, '');
  if (table.length === 0) throw new RangeError('a table of part-open loss needs a row');
  const [lastOpening, lastCoefficient] = table[table.length - 1];
  if (opening === 0) return Number.POSITIVE_INFINITY;
  if (opening <= lastOpening) return lastCoefficient * (lastOpening / opening) ** 2;
  const below = table.findIndex(([row]) => row <= opening);
  if (below <= 0) return table[0][1];
  const [above, high] = table[below - 1];
  const [under, low] = table[below];
  const part = (above - opening) / (above - under);
  return Math.expm1(Math.log1p(high) + part * (Math.log1p(low) - Math.log1p(high)));
}
