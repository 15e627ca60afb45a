import { REFERENCE_WATER_DENSITY, STANDARD_GRAVITY } from './constants.js';
import { GALLON_PER_MINUTE, PSI } from './customary.js';
import { requirePositive } from './range.js';

const REFERENCE_WEIGHT = REFERENCE_WATER_DENSITY * STANDARD_GRAVITY;

/**
 * Resistance of a valve by its flow coefficient: the gpm of water at 60 degF that it passes with a loss of 1 psi.
 *
 * Formula: Q[gpm] = Cv sqrt(loss[psi]), so r = psi / (rho g (Cv gpm)^2)
 * Range: coefficient above 0; turbulent flow, no cavitation.
 * Errors: RangeError where the coefficient is not above 0.
 * Source: Crane TP-410 (2009) and ANSI/ISA 75.01 definition, from memory.
 * @param flowCoefficient gpm at 1 psi [1]
 * @returns head loss over flow squared [m/(m3/s)^2]
 * @example flowCoefficientResistance(60) // => 49116
 */
export function flowCoefficientResistance(flowCoefficient: number): number {
  requirePositive('flow coefficient', flowCoefficient, 'gpm at 1 psi');
  return PSI / (REFERENCE_WEIGHT * (flowCoefficient * GALLON_PER_MINUTE) ** 2);
}

/**
 * Resistance of a valve by its metric flow coefficient: the m3/h of water that it passes with a loss of 1 bar.
 *
 * Formula: Q[m3/h] = Kv sqrt(loss[bar]), so r = 1e5 / (rho g (Kv/3600)^2)
 * Range: coefficient above 0; turbulent flow, no cavitation.
 * Errors: RangeError where the coefficient is not above 0.
 * Source: Crane TP-410 (2009), metric edition, from a public library that solves its examples.
 * @param metric m3/h at 1 bar [1]
 * @returns head loss over flow squared [m/(m3/s)^2]
 * @example metricFlowCoefficientResistance(500) // => 529.17
 */
export function metricFlowCoefficientResistance(metric: number): number {
  requirePositive('metric flow coefficient', metric, 'm3/h at 1 bar');
  return 1e5 / (REFERENCE_WEIGHT * (metric / 3600) ** 2);
}
