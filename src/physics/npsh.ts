import { STANDARD_GRAVITY } from './constants.js';
import { FOOT, INCH_OF_MERCURY, PSI } from './customary.js';
import { requireNotNegative } from './range.js';

/**
 * Net positive suction head that a suction offers a pump.
 *
 * Formula: NPSHa = (p_abs - p_v)/(rho g) + z - h_f
 * Range: any; the pump needs it to exceed NPSHr with a margin. Datum is the centre of the impeller's eye.
 * Errors: none.
 * Source: pump encyclopedia, entry "system NPSH available"; Crane TP-410 (2009) example 7.32.
 * @param surfacePressure absolute pressure on the water's surface [Pa]
 * @param vapourPressure absolute vapour pressure [Pa]
 * @param density density of the water [kg/m3]
 * @param surfaceHeight height of the surface over the pump, below 0 in a lift [m]
 * @param suctionLoss head lost in the suction [m]
 * @returns NPSH available [m]
 * @example netPositiveSuctionHead(135799, 1767, 998.967, -7.62, 1.8288) // => 4.233
 */
export function netPositiveSuctionHead(
  surfacePressure: number,
  vapourPressure: number,
  density: number,
  surfaceHeight: number,
  suctionLoss: number,
): number {
  return (surfacePressure - vapourPressure) / (density * STANDARD_GRAVITY) + surfaceHeight - suctionLoss;
}

/**
 * Height to which the air could push water into a perfect vacuum.
 *
 * Formula: h = p / (rho g); with the vapour pressure taken off where it is given
 * Range: pressures 0 or above.
 * Errors: RangeError outside the range.
 * Source: NWCG Firefighter Math 3.5 (14.7 psi, 33.9 ft).
 * @param atmosphericPressure absolute pressure of the air [Pa]
 * @param density density of the water [kg/m3]
 * @param vapourPressure absolute vapour pressure, 0 unless given [Pa]
 * @returns height [m]
 * @example theoreticalLift(101325, 998.967) // => 10.343
 */
export function theoreticalLift(atmosphericPressure: number, density: number, vapourPressure = 0): number {
  requireNotNegative('atmospheric pressure', atmosphericPressure, 'Pa');
  requireNotNegative('vapour pressure', vapourPressure, 'Pa');
  return (atmosphericPressure - vapourPressure) / (density * STANDARD_GRAVITY);
}

/**
 * Lift that a pump in good order attains in the field.
 *
 * Formula: 2/3 of the theoretical lift
 * Range: lift 0 or above.
 * Errors: RangeError outside the range.
 * Source: NWCG Firefighter Math 3.5.
 * @param theoretical theoretical lift [m]
 * @returns attainable lift [m]
 * @example attainableLift(33.9) // => 22.6
 */
export function attainableLift(theoretical: number): number {
  requireNotNegative('lift', theoretical, 'm');
  return (2 / 3) * theoretical;
}

/**
 * Height of water that a vacuum gauge's reading stands for.
 *
 * Formula: lift[ft] = 1.13 vacuum[inHg]
 * Range: vacuum 0 or above; still water.
 * Errors: RangeError outside the range.
 * Source: NWCG Firefighter Math, Table 3.1 (1.13, also 1.134); water at 60 degF makes 1.134.
 * @param vacuum gauge pressure below the air's [Pa]
 * @returns lift [m]
 * @example liftFromVacuum(22 * 3386.388) // => 7.577
 */
export function liftFromVacuum(vacuum: number): number {
  requireNotNegative('vacuum', vacuum, 'Pa');
  return ((1.13 * FOOT) / INCH_OF_MERCURY) * vacuum;
}

/**
 * What a pump at draft adds over its discharge gauge: net pressure is the gauge and this.
 *
 * Formula: PC[psi] = (lift[ft] + intake loss[ft]) / 2.3
 * Range: lift and loss 0 or above.
 * Errors: RangeError outside the range.
 * Source: IFSTA pump-operator cards, static water supply.
 * @param lift height of the pump over the water [m]
 * @param intakeLoss head lost in strainer and hard suction [m]
 * @returns pressure correction [Pa]
 * @example draftPressureCorrection(3.048, 1.0973) // => 40769
 */
export function draftPressureCorrection(lift: number, intakeLoss: number): number {
  requireNotNegative('lift', lift, 'm');
  requireNotNegative('intake loss', intakeLoss, 'm');
  return ((lift + intakeLoss) / FOOT / 2.3) * PSI;
}
