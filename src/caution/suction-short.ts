import type { AssembledPump } from '../assembly/assembly.js';
import { STANDSTILL } from '../assembly/standstill.js';
import { npshAvailable } from '../assembly/suction-head.js';
import { certainSuctionNeed, type SuctionBasis, suctionNeed } from '../limits/suction-need.js';
import type { Caution } from './caution.js';
import type { Hazard, HazardCase } from './hazard.js';
import { overAttainable } from './high-lift.js';
import { belowVapour } from './inlet-vapour.js';
import { pastLimit } from './ledger-limit.js';

const ACTION =
  'Widen or shorten the line that it draws through, clear the strainer and vent, lower the lift, or draw less.';

const BASIS: Record<SuctionBasis, { level: Caution['level']; says: string; source: string }> = {
  file: {
    level: 'stop',
    says: 'it cavitates and gives less than its curve',
    source: 'Hydraulic Institute definition of NPSH required (from memory); the table of the pump',
  },
  file_extended: {
    level: 'warn',
    says: 'its file does not reach so far, and with its rows carried on it cavitates',
    source:
      'Hydraulic Institute definition of NPSH required (from memory); rows carried on (common practice, no source)',
  },
  lift_practice: {
    level: 'warn',
    says: 'a third of the theoretical lift has to be left, and it may cavitate',
    source: 'NWCG Firefighter Math 3.5: two thirds of the theoretical lift',
  },
};

/**
 * A pump with less suction head than it needs, in any state or as its tank is drawn down: it cavitates. Where the water would
 * boil at its inlet, or the lift alone is more than the trade counts on, that is the same fault, and is told as that.
 */
export const suctionShort: Hazard = (facts) => {
  const { layout, cases } = facts;
  const boils = new Set(
    cases.flatMap(({ point }) =>
      point.assembly.pumps.filter((pump) => belowVapour(point, pump)).map(({ name }) => name),
    ),
  );
  const lifted = overAttainable(layout) !== undefined;
  const byPractice = new Set(
    cases.flatMap(({ point }) =>
      point.assembly.pumps
        .filter((pump) => suctionNeed(point, pump).basis === 'lift_practice')
        .map(({ name }) => name),
    ),
  );
  const drawnDown = pastLimit(facts, 'suction_short', ({ worstWhen }) => ({
    level: 'warn',
    message: `{at} has {value} of suction head ${worstWhen}, and needs {limit}: it cavitates`,
    action: ACTION,
  }));
  return [
    ...cases.flatMap((one) => one.point.assembly.pumps.flatMap((pump) => inCase(one, pump))),
    ...drawnDown,
  ].filter(({ at }) => !boils.has(at) && !(lifted && byPractice.has(at)));
};

function inCase({ when, point }: HazardCase, pump: AssembledPump): Caution[] {
  if (point.flow(pump.link) <= STANDSTILL) return [];
  const { head, basis } = suctionNeed(point, pump);
  // What comes to a booster under pressure is held to the floor of an intake instead.
  if (pump.booster && basis === 'lift_practice') return [];
  const value = npshAvailable(point, pump);
  const certain = certainSuctionNeed(point, pump);
  const sure = certain !== undefined && value < certain;
  if (value >= head && !sure) return [];
  const { level, says, source } = BASIS[sure ? 'file' : basis];
  return [
    {
      code: 'suction_short',
      level,
      at: pump.name,
      value: { value, dimension: 'length' },
      limit: { value: head, dimension: 'length' },
      message: `{at} has {value} of net positive suction head ${when} and needs {limit}: ${says}`,
      action: ACTION,
      source,
    },
  ];
}
