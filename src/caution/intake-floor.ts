import type { AssembledPump } from '../assembly/assembly.js';
import type { OperatingPoint } from '../assembly/operating-point.js';
import { boilingPressure } from '../limits/impossible.js';
import { INTAKE_FLOOR, INTAKE_FLOOR_SOURCE } from '../physics/relay.js';
import type { Caution } from './caution.js';
import type { Hazard } from './hazard.js';

/** Water that comes under pressure, from a hydrant, another engine or the pump before a booster, and stands below 20 psi. */
export const intakeFloor: Hazard = ({ layout, cases }) => {
  const pressed = layout.supply.kind === 'hydrant' || layout.supply.kind === 'relay';
  return cases.flatMap(({ when, point }) => {
    const { pumps, staging } = point.assembly;
    const own = pressed ? pumps.filter((pump) => !pump.booster) : [];
    const drawing = staging.startsWith('series') ? own.slice(0, 1) : own;
    const boosters = pumps.filter((pump) => pump.booster && !drawsFromTank(point, pump));
    return [...drawing, ...boosters].flatMap((pump): Caution[] => {
      const value = point.gaugePressure(pump.inlet);
      if (value >= INTAKE_FLOOR || point.flow(pump.link) <= 0) return [];
      // Where water would boil no pressure stands, and none is told.
      const parts = value <= boilingPressure(point);
      return [
        {
          code: 'intake_below_floor',
          level: value < 0 ? 'stop' : 'warn',
          at: pump.name,
          ...(!parts && { value: { value, dimension: 'pressure' as const } }),
          limit: { value: INTAKE_FLOOR, dimension: 'pressure' },
          message: `The intake of {at} ${parts ? 'would have to stand where water boils' : 'stands at {value}'} ${when}; at least {limit} is kept there, or soft hose collapses and the pump runs away from its water`,
          action: pump.booster
            ? 'Set the booster nearer the pump before it, throttle it down, or feed it from a portable tank.'
            : 'Throttle down, open fewer lines, lay a larger or second supply line, or ask for more pressure.',
          source: INTAKE_FLOOR_SOURCE,
        },
      ];
    });
  });
};

/** Whether an open tank stands in the line before a booster: what feeds it there is height, not the pump before. */
function drawsFromTank(point: OperatingPoint, pump: AssembledPump): boolean {
  const { elements, outlets } = point.assembly;
  const ends = new Set(outlets.map(({ place }) => place.node));
  const arriving = new Map(elements.toReversed().map((element) => [element.to.node, element]));
  let { node } = pump.inlet;
  for (let steps = 0; steps <= elements.length && !ends.has(node); steps++) {
    const before = arriving.get(node);
    if (before === undefined || before.kind === 'pump') return false;
    if (before.kind === 'tank') return true;
    node = before.from.node;
  }
  return false;
}
