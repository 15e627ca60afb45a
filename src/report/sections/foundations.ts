import type { Dimension } from '../../quantity/dimension.js';
import { toUnit, type UnitSystem, unitFor } from '../../quantity/format.js';
import type { SolverReport, Statement } from '../../study/answer.js';
import { checkedNumber } from '../checked-number.js';
import { type Block, heading, paragraph } from '../document.js';
import type { Figures } from '../figures.js';
import { statementText } from '../sentence.js';
import { counted, DEFERRAL } from '../words.js';

function tiny(field: string, value: number, dimension: Dimension, units: UnitSystem): string {
  const unit = unitFor(dimension, units);
  return `${toUnit(checkedNumber(field, value), unit).toPrecision(1)} ${unit}`;
}

function solverLine({ iterations, flowResidual, energyResidual }: SolverReport, units: UnitSystem): string {
  const flow = tiny('solver.flow_residual', flowResidual, 'flow', units);
  const energy = tiny('solver.energy_residual', energyResidual, 'pressure', units);
  return `Solved in ${counted(iterations, 'iteration')}; no junction is out of balance by more than ${flow}, no part by more than ${energy}.`;
}

/** What the answer rests on, then who has the last word. */
export function foundationsSection(
  assumptions: Statement[],
  solver: SolverReport,
  figures: Figures,
): Block[] {
  const items = assumptions.map((statement) => {
    const text = statementText(statement, figures).replace(/\.$/, '');
    return { lines: [statement.source ? `${text} [${statement.source}].` : `${text}.`] };
  });
  return [
    heading('What this rests on'),
    ...(items.length > 0 ? [{ kind: 'list' as const, items }] : []),
    paragraph(solverLine(solver, figures.units), 'quiet'),
    paragraph(DEFERRAL),
  ];
}
