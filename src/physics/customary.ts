/**
 * The units in which the published formulae are stated, in SI. All follow exactly from the inch (0.0254 m), the pound
 * (0.45359237 kg) and the US gallon (231 cubic inches).
 */
export const INCH = 0.0254;
export const FOOT = 0.3048;
export const US_GALLON = 231 * INCH ** 3;
export const GALLON_PER_MINUTE = US_GALLON / 60;
export const LITRE_PER_MINUTE = 1e-3 / 60;
export const POUND_FORCE = 0.45359237 * 9.80665;
export const PSI = POUND_FORCE / INCH ** 2;
export const HORSEPOWER = 550 * FOOT * POUND_FORCE;
/** Conventional inch of mercury: 13,595.1 kg/m3 under standard gravity. */
export const INCH_OF_MERCURY = 13595.1 * 9.80665 * INCH;
