import type { Dimension, Measure } from '../quantity/dimension.js';
import type { CheckAnswer } from '../study/answer.js';
import type { Figures } from './figures.js';

export const of = (dimension: Dimension, value: number): Measure => ({ value, dimension });

type Asked = Pick<CheckAnswer, 'requirement' | 'atRequiredFlow' | 'atRequiredPressure' | 'stagings'>;

/** The required flow, told apart from every predicted flow that is printed beside it. */
export function requiredFlow({ requirement, atRequiredPressure, stagings }: Asked, figures: Figures): string {
  const rivals = [atRequiredPressure, ...stagings.map((line) => line.atRequiredPressure)].map(
    (at) => at?.flow,
  );
  return figures.stated('requirement.flow', of('flow', requirement.flow), rivals);
}

/** The required pressure, told apart from every predicted pressure that is printed beside it. */
export function requiredPressure({ requirement, atRequiredFlow, stagings }: Asked, figures: Figures): string {
  const rivals = [atRequiredFlow, ...stagings.map((line) => line.atRequiredFlow)].map((at) => at?.pressure);
  return figures.stated('requirement.pressure', of('pressure', requirement.pressure), rivals);
}

/** The flow at which pumps, losses and gauges are told: what is required, or the most that can be drawn. */
export function toldFlow(answer: Asked & Pick<CheckAnswer, 'toldAt'>, figures: Figures): string {
  const { toldAt, requirement } = answer;
  return toldAt === undefined || toldAt === requirement.flow
    ? requiredFlow(answer, figures)
    : `${figures.say('told_at', 'flow', toldAt, { limit: requirement.flow })}, the most that can be drawn`;
}
