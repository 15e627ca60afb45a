import { expect } from 'vitest';
import { REFERENCE_WATER_DENSITY, STANDARD_GRAVITY } from '../../src/physics/constants.js';
import { FOOT, GALLON_PER_MINUTE, INCH, PSI } from '../../src/physics/customary.js';

/** Customary figures of a source into SI, with water at the 60 degF that the trade's constants are taken at. */
export const inches = (value: number) => value * INCH;
export const feet = (value: number) => value * FOOT;
export const psi = (value: number) => value * PSI;
export const gpm = (value: number) => value * GALLON_PER_MINUTE;
export const WATER = REFERENCE_WATER_DENSITY;
export const fahrenheit = (value: number) => ((value + 459.67) * 5) / 9;

/** Head (m) of a pressure in psi, and back. */
export const headOfPsi = (value: number) => psi(value) / (WATER * STANDARD_GRAVITY);
export const psiOfHead = (head: number) => (head * WATER * STANDARD_GRAVITY) / PSI;

/**
 * The figure agrees with what a source prints: within half a unit of the last digit that it prints. The slack is for a figure
 * that falls on the half; `doubt` is what a test says that a source leaves open besides its rounding.
 */
export function expectPrinted(found: number, printed: string, doubt = 0): void {
  const decimals = printed.split('.')[1]?.length ?? 0;
  const half = 0.5 * 10 ** -decimals;
  expect(Math.abs(found - Number(printed)), `${found} against ${printed} as printed`).toBeLessThanOrEqual(
    half * 1.0001 + doubt,
  );
}
