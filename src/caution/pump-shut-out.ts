import type { HeatAnswer } from '../study/engine-answer.js';
import type { Caution } from './caution.js';
import type { Hazard } from './hazard.js';

/** 140 degF, at which water scalds within seconds. Common practice, no source. */
export const SCALDING = ((140 - 32) * 5) / 9 + 273.15;

/** Below this a pump moves nothing that cools it, m3/s (0.02 gpm). */
const STANDSTILL = 1e-6;

/**
 * A running pump that moves no water: shut out, because the header stands above its shutoff and holds its check valve
 * shut, or dead-headed, because every way out is shut. All its power then heats the water that it holds.
 */
export const pumpShutOut: Hazard = ({ cases, heat }) =>
  cases.flatMap(({ kind, when, point }) =>
    point.assembly.pumps.flatMap((pump): Caution[] => {
      const flow = point.flow(pump.link);
      if (flow > STANDSTILL) return [];
      const others = point.assembly.pumps.some(
        (other) => other !== pump && point.flow(other.link) > STANDSTILL,
      );
      const common = { at: pump.name, value: { value: Math.max(flow, 0), dimension: 'flow' as const } };
      const soon = boilsIn(heat?.find(({ name }) => name === pump.name));
      const source =
        'Wildland Fire Lessons Learned Center 2023, two pumps in parallel uphill; heat by the energy balance';
      if (others && kind !== 'shut') {
        return [
          {
            ...common,
            code: 'pump_shut_out',
            level: 'stop',
            message: `{at} moves {value} ${when}: the header stands at {header}, above what it can reach, and its check valve is held shut. It heats its own water${soon.text}, and can scald`,
            action:
              'Run them in series, bring both to the same pressure, or stop {at}; give it a cooling line between the pump and its own check valve.',
            values: {
              ...soon.values,
              header: { value: point.gaugePressure(pump.discharge), dimension: 'pressure' },
            },
            source,
          },
        ];
      }
      return [
        {
          ...common,
          code: 'pump_dead_headed',
          level: 'warn',
          message: `{at} moves {value} ${when}, and no cooling line carries water through it: its power heats the water that it holds until it boils${soon.text}`,
          values: soon.values,
          action:
            'Fit a line back to the tank between the pump and its own check valve, prove it by looking at the return, and never leave the pump running with everything shut.',
          source,
        },
      ];
    }),
  );

/** How soon, by its trapped water and its power. No heat is taken off for metal and air, so that it takes longer. */
function boilsIn(heat: HeatAnswer | undefined): { text: string; values?: Caution['values'] } {
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
