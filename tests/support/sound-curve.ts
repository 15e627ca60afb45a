import { GALLON_PER_MINUTE, PSI } from '../../src/physics/customary.js';
import { heightOfPressure } from '../../src/physics/elevation.js';
import { MonotoneCurve } from '../../src/physics/pump-curve/monotone.js';

/** Of the water that the curve is told in, kg/m3. */
export const DENSITY = 999;

export const gpm = (value: number): number => value * GALLON_PER_MINUTE;

/** A pump of our own invention that falls steadily from 415 psi. */
export const SOUND_CURVE = new MonotoneCurve(
  [
    [0, 415],
    [30, 385],
    [60, 318],
    [85, 228],
    [105, 110],
  ].map(([q, p]) => ({ flow: gpm(q), head: heightOfPressure(p * PSI, DENSITY) })),
);
