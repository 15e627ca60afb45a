import type { Drafting, Setting } from './draft.js';
import type { SketchPart } from './problem.js';
import type { Draw } from './random.js';
import type { Load, SquarePump } from './solver/two-pumps.js';

/** Pumps on a pressure that is held at the manifold, or on a line of some height and loss. */
export interface TwoPumpFacts {
  readonly pumps: readonly [SquarePump, SquarePump];
  readonly load: Load;
}

const side: SketchPart = {
  kind: 'joined',
  label: '',
  legs: [[{ kind: 'pump', label: 'pump A' }], [{ kind: 'pump', label: 'pump B' }]],
};
export const PARALLEL: readonly SketchPart[] = [
  { kind: 'source', what: 'tank', label: 'tank' },
  side,
  { kind: 'gauge', label: 'manifold' },
];
export const SERIES: readonly SketchPart[] = [
  { kind: 'source', what: 'tank', label: 'tank' },
  { kind: 'pump', label: 'pump A' },
  { kind: 'pump', label: 'pump B' },
  { kind: 'gauge', label: 'manifold' },
];

export const round = (value: number, step: number) => step * Math.round(value / step);

/** A line that takes the pumps to a sound part of their curves. */
export function drawLoad(draw: Draw, setting: Setting, shutoff: number, flow: number): Load {
  const us = setting.units === 'us';
  const height = setting.level >= 4 ? round(shutoff * draw.pick([0.1, 0.15, 0.2, 0.25]), us ? 5 : 25) : 0;
  const left = shutoff * draw.pick([0.5, 0.55, 0.6, 0.65, 0.7]) - height;
  return { static: height, loss: Math.max(1, round(left / (flow / 100) ** 2, us ? 5 : 1)) };
}

/** Gives the load's figures and says them. */
export function giveLoad(d: Drafting, load: Load): string {
  const { unit } = d.setting;
  if ('held' in load) {
    const p = d.give('P', 'pressure at the manifold', load.held, unit.pressure);
    return `The manifold stands at ${p}.`;
  }
  const k = d.give('K', `what the line takes at 100 ${unit.flow}`, load.loss, unit.pressure);
  const e =
    load.static > 0
      ? d.give('E', 'pressure of the height that the line climbs', load.static, unit.pressure)
      : '';
  const climbs = e === '' ? 'level' : `climbing a height that takes ${e}`;
  return `The line, ${climbs}, takes ${k} in hose and nozzle at 100 ${unit.flow}, growing with the square of the flow.`;
}
