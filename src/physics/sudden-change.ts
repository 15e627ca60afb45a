import { requireWithin } from './range.js';

/**
 * Loss coefficient of a sudden widening, on the velocity in the narrow bore.
 *
 * Formula: K = (1 - b^2)^2, b = narrow bore / wide bore; 1 where a pipe ends in a tank
 * Range: b from 0 to 1.
 * Errors: RangeError outside the range.
 * Source: Borda-Carnot, as in Crane TP-410 (2009); exit 1.0 seen there, the formula from memory.
 * @param boreRatio narrow bore over wide bore [1]
 * @returns K on the narrow bore [1]
 * @example suddenExpansion(0.5) // => 0.5625
 */
export function suddenExpansion(boreRatio: number): number {
  requireWithin('bore ratio', boreRatio, 0, 1, '');
  return (1 - boreRatio ** 2) ** 2;
}

/**
 * Loss coefficient of a sudden narrowing, on the velocity in the narrow bore.
 *
 * Formula: K = 0.5 (1 - b^2), b = narrow bore / wide bore; 0.5 where a pipe leaves a tank at a sharp edge
 * Range: b from 0 to 1.
 * Errors: RangeError outside the range.
 * Source: Crane TP-410 (2009); sharp entrance 0.5 seen there, the formula from memory.
 * @param boreRatio narrow bore over wide bore [1]
 * @returns K on the narrow bore [1]
 * @example suddenContraction(0.5) // => 0.375
 */
export function suddenContraction(boreRatio: number): number {
  requireWithin('bore ratio', boreRatio, 0, 1, '');
  return 0.5 * (1 - boreRatio ** 2);
}
