export { GPM } from './units.js';

/** 550 ft lbf a second. */
export const HORSEPOWER = 550 * 0.3048 * 0.45359237 * 9.80665;

export const kelvin = (fahrenheit: number): number => ((fahrenheit - 32) * 5) / 9 + 273.15;
