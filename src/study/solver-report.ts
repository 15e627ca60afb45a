import type { OperatingPoint } from '../assembly/operating-point.js';
import type { SolverReport } from './answer.js';

/** How well an answer holds together. */
export function solverReport(state: OperatingPoint): SolverReport {
  const { iterations, flowResidual, headResidual } = state.solution;
  return { iterations, flowResidual, energyResidual: state.pressureOf(headResidual) };
}
