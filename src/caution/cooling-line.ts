import type { Caution } from './caution.js';
import type { Hazard } from './hazard.js';

/** A cooling line that cannot help a pump whose check valve the other pump holds shut, or that is shut itself. */
export const coolingLine: Hazard = ({ layout }) => {
  const { cooling } = layout.engine.plumbing;
  if (cooling === undefined) return [];
  const source =
    'USDA Forest Service required action after a scald: see water at the tank return with everything else shut; placing by the check valves that close';
  const cautions: Caution[] = [];
  if (cooling.at !== 'pump' && layout.engine.pumps.b !== undefined) {
    const where =
      cooling.at === 'manifold' ? 'One cooling line is shared at the manifold' : 'The cooling lines leave';
    cautions.push({
      code: 'cooling_behind_check',
      level: 'warn',
      at: 'the cooling line',
      message: `${where} behind the check valves: a pump that is shut out has its check valve held shut, and no water of its own reaches the line`,
      action: 'Move it: one line for each pump, between the pump and its own check valve.',
      source,
    });
  }
  if (cooling.state === 'shut') {
    cautions.push({
      code: 'cooling_shut',
      level: 'warn',
      at: 'the cooling line',
      message: 'The valve of {at} is shut: nothing cools a pump that moves no water',
      action: 'Open it before the pumps are started, and prove it by looking at the return.',
      source,
    });
  }
  return cautions;
};
