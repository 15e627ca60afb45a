import { waterDensity } from './water.js';

/** Standard acceleration of gravity, m/s2. Source: 3rd General Conference on Weights and Measures, 1901. */
export const STANDARD_GRAVITY = 9.80665;

/** 60 degF, K: the temperature at which the trade's constants for water are taken. */
export const REFERENCE_TEMPERATURE = ((60 + 459.67) * 5) / 9;

/**
 * Density of water at 60 degF, kg/m3. The trade's formulae (29.7 d2 sqrt(P), hose coefficients) are stated in psi with no
 * temperature; here they are taken as true at this density, so that at the default water temperature they come out as
 * printed and at any other only the weight of the water changes.
 */
export const REFERENCE_WATER_DENSITY = waterDensity(REFERENCE_TEMPERATURE);

/** Specific heat of liquid water, J/(kg K), within 0.4 % from 5 to 80 degC. From memory. */
export const SPECIFIC_HEAT_OF_WATER = 4186;
