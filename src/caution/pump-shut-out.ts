import type { AssembledPump } from '../assembly/assembly.js';
import { isShutOut } from '../assembly/delivered.js';
import type { OperatingPoint } from '../assembly/operating-point.js';
import { STANDSTILL } from '../assembly/standstill.js';
import { boilingPressure } from '../limits/impossible.js';
import { SCALDING } from '../limits/water-temperature.js';
import type { Caution } from './caution.js';
import type { PumpHeat } from './facts.js';
import type { Hazard, HazardCase } from './hazard.js';

const SOURCE =
  'Wildland Fire Lessons Learned Center 2023, two pumps in parallel uphill; heat by the energy balance';

/**
 * A running pump that gives no water: shut out, because the header stands above what it can reach and holds its check valve
 * shut or drives water back through it; or dead-headed, because every way out is shut. Without a cooling line all its
 * power then heats the water that it holds.
 */
export const pumpShutOut: Hazard = ({ cases, heat }) =>
  cases.flatMap((one) =>
    one.point.assembly.pumps.flatMap((pump): Caution[] => {
      const shut = one.kind === 'shut' || one.kind === 'laid_shut';
      // Of a state that cannot be, what it cannot be for is told, and no header that stands nowhere.
      if (!shut && isShutOut(one.point, pump) && headerOf(one.point, pump) <= boilingPressure(one.point))
        return [];
      if (!shut && isShutOut(one.point, pump)) return [shutOut(one, pump, boilsIn(pump, heat))];
      return one.point.flow(pump.link) > STANDSTILL ? [] : [deadHeaded(one, pump, boilsIn(pump, heat))];
    }),
  );

const headerOf = (point: OperatingPoint, { checkValve, discharge }: AssembledPump): number =>
  point.gaugePressure(checkValve ? checkValve.to : discharge);

function shutOut({ when, point }: HazardCase, pump: AssembledPump, soon: Soon): Caution {
  const { checkValve } = pump;
  const header = headerOf(point, pump);
  const common = {
    code: 'pump_shut_out',
    at: pump.name,
    values: { ...soon.values, header: { value: header, dimension: 'pressure' as const } },
    source: SOURCE,
  };
  const lost = `{at} gives {value} ${when}: the header stands at {header}, above what it can reach`;
  const remedy = 'Run them in series, bring both to the same pressure, or stop {at}';
  if (checkValve === undefined) {
    return {
      ...common,
      level: 'stop',
      value: { value: -point.flow(pump.link), dimension: 'flow' },
      message: `{value} run back through {at} ${when}: the header stands at {header}, above what it can reach, and no check valve holds it. How much runs back is a guess`,
      action:
        'Fit a check valve in its discharge, and run them in series or bring both to the same pressure.',
    };
  }
  const value = { value: 0, dimension: 'flow' as const };
  if (point.flow(pump.link) > STANDSTILL) {
    return {
      ...common,
      level: 'warn',
      value,
      message: `${lost}, and its check valve is held shut. Only its cooling line keeps it from boiling its water`,
      action: `${remedy}.`,
    };
  }
  return {
    ...common,
    level: 'stop',
    value,
    message: `${lost}, and its check valve is held shut. It heats its own water${soon.text}, and can scald`,
    action: `${remedy}; give it a cooling line between the pump and its own check valve.`,
  };
}

function deadHeaded({ when, point }: HazardCase, pump: AssembledPump, soon: Soon): Caution {
  return {
    code: 'pump_dead_headed',
    level: 'warn',
    at: pump.name,
    value: { value: Math.max(point.flow(pump.link), 0), dimension: 'flow' },
    message: `{at} moves {value} ${when}, and no cooling line carries water through it: its power heats the water that it holds until it boils${soon.text}`,
    values: soon.values,
    action:
      'Fit a line back to the tank between the pump and its own check valve, prove it by looking at the return, and never leave the pump running with everything shut.',
    source: SOURCE,
  };
}

interface Soon {
  text: string;
  values?: Caution['values'];
}

/** How soon, by its trapped water and its power. No heat is taken off for metal and air, so that it takes longer. */
function boilsIn({ name }: AssembledPump, heats: readonly PumpHeat[] | undefined): Soon {
  const heat = heats?.find((one) => one.name === name);
  if (heat?.untilScald === undefined || heat.untilBoiling === undefined) return { text: '' };
  const bound = heat.basis === 'engine_rating' ? ' if its engine gave all its power' : '';
  return {
    text: `, to {scalding} in {scald} and to boiling in {boiling} at the soonest${bound}`,
    values: {
      scalding: { value: SCALDING, dimension: 'temperature' },
      scald: { value: heat.untilScald, dimension: 'time' },
      boiling: { value: heat.untilBoiling, dimension: 'time' },
    },
  };
}
