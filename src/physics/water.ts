import { requireWithin } from './range.js';

const CRITICAL_TEMPERATURE = 647.096;
const CRITICAL_PRESSURE = 22.064e6;
const CRITICAL_DENSITY = 322;
/** Water is liquid between these, K: 0 and 100 degC. */
export const FREEZING = 273.15;
export const BOILING = 373.15;

/**
 * Density of liquid water on the saturation line.
 *
 * Formula: rho = 322 (1 + b1 t^(1/3) + b2 t^(2/3) + b3 t^(5/3) + b4 t^(16/3) + b5 t^(43/3) + b6 t^(110/3)), t = 1 - T/647.096
 * Range: 0 to 100 degC. Under pump pressures water is denser by less than 0.2 % at 600 psi, which is left out.
 * Errors: RangeError outside the range.
 * Source: IAPWS SR1-86(1992), saturation properties of ordinary water, auxiliary equations; coefficients from memory, checked
 * against Perry's Chemical Engineers' Handbook, 9th ed., Table 2-135.
 * @param temperature water temperature [K]
 * @returns density [kg/m3]
 * @example waterDensity(293.15) // => 998.16
 */
export function waterDensity(temperature: number): number {
  requireWithin('water temperature', temperature, FREEZING, BOILING, 'K');
  const t = 1 - temperature / CRITICAL_TEMPERATURE;
  const third = Math.cbrt(t);
  return (
    CRITICAL_DENSITY *
    (1 +
      1.99274064 * third +
      1.09965342 * third ** 2 -
      0.510839303 * third ** 5 -
      1.75493479 * third ** 16 -
      45.5170352 * third ** 43 -
      6.7469445e5 * third ** 110)
  );
}

/**
 * Pressure, absolute, at which water boils at a temperature.
 *
 * Formula: ln(p/22.064e6) = (647.096/T) (a1 t + a2 t^1.5 + a3 t^3 + a4 t^3.5 + a5 t^4 + a6 t^7.5), t = 1 - T/647.096
 * Range: 0 to 100 degC.
 * Errors: RangeError outside the range.
 * Source: IAPWS SR1-86(1992), auxiliary equations; coefficients from memory, checked against the CRC Handbook of Chemistry and
 * Physics, 1992-93, vapour pressure of water, to 0.1 %.
 * @param temperature water temperature [K]
 * @returns absolute vapour pressure [Pa]
 * @example vapourPressure(293.15) // => 2339.2
 */
export function vapourPressure(temperature: number): number {
  requireWithin('water temperature', temperature, FREEZING, BOILING, 'K');
  const t = 1 - temperature / CRITICAL_TEMPERATURE;
  const exponent =
    -7.85951783 * t +
    1.84408259 * t ** 1.5 -
    11.7866497 * t ** 3 +
    22.6807411 * t ** 3.5 -
    15.9618719 * t ** 4 +
    1.80122502 * t ** 7.5;
  return CRITICAL_PRESSURE * Math.exp((CRITICAL_TEMPERATURE / temperature) * exponent);
}

/**
 * Dynamic viscosity of liquid water.
 *
 * Formula: mu = 1e-6 (280.68 x^-1.9 + 511.45 x^-7.7 + 61.131 x^-19.6 + 0.45903 x^-40), x = T/300
 * Range: 0 to 100 degC, at 0.1 MPa; pump pressures change it by less than 1 %.
 * Errors: RangeError outside the range.
 * Source: IAPWS SR6-08(2011), liquid water at 0.1 MPa; coefficients from memory.
 * @param temperature water temperature [K]
 * @returns dynamic viscosity [Pa s]
 * @example dynamicViscosity(293.15) // => 0.0010016
 */
export function dynamicViscosity(temperature: number): number {
  requireWithin('water temperature', temperature, FREEZING, BOILING, 'K');
  const x = temperature / 300;
  return 1e-6 * (280.68 * x ** -1.9 + 511.45 * x ** -7.7 + 61.131 * x ** -19.6 + 0.45903 * x ** -40);
}

/**
 * Kinematic viscosity of liquid water.
 *
 * Formula: nu = mu / rho
 * Range: 0 to 100 degC.
 * Errors: RangeError outside the range.
 * Source: IAPWS SR6-08(2011) and SR1-86(1992); coefficients from memory.
 * @param temperature water temperature [K]
 * @returns kinematic viscosity [m2/s]
 * @example kinematicViscosity(293.15) // => 1.0034e-6
 */
export function kinematicViscosity(temperature: number): number {
  return dynamicViscosity(temperature) / waterDensity(temperature);
}
