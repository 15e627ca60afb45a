import type { AssembledNozzle } from '../assembly/assembly.js';
import type { Caution } from './caution.js';
import type { Hazard } from './hazard.js';

/** Part of its rated pressure, or of what it is laid for, below which a nozzle that states no range makes no stream. Common practice, no source. */
const OF_RATED = 0.5;

/**
 * A nozzle that gets too little while others flow: the trunk carries less at every lateral, and each lateral loses its own, so that
 * no one flow stands for a whole lay.
 */
export const starvedNozzle: Hazard = ({ cases }) =>
  cases
    .filter(({ kind }) => kind === 'laid')
    .flatMap(({ when, point }) => {
      const open = point.assembly.nozzles.filter(({ state, link }) => state === 'open' && link !== undefined);
      const total = open.reduce((sum, { link }) => sum + Math.max(0, point.flow(link as number)), 0);
      return open.flatMap((nozzle): Caution[] => {
        const limit = leastPressure(nozzle);
        // Where water does not come up to an open nozzle, the air stands in it.
        const dry = point.totalPressure(nozzle.inlet) < 0;
        const value = Math.max(0, point.totalPressure(nozzle.inlet));
        if (limit === undefined || value >= limit) return [];
        const alone = open.length === 1;
        return [
          {
            code: 'nozzle_starved',
            level: 'warn',
            at: nozzle.name,
            value: { value, dimension: 'pressure' },
            limit: { value: limit, dimension: 'pressure' },
            message: dry
              ? `No water reaches {at} ${when}: it works from {limit}`
              : alone
                ? `{at} gets {value} ${when}, below the {limit} that it works from`
                : `{at} gets {value} and {own} ${when}, below the {limit} that it works from: the first hose carries {total} for ${open.length} nozzles, and no one flow holds from end to end`,
            action:
              'Shut a lateral, lay a wider trunk, raise the throttle within the limits, or set a booster.',
            values: {
              own: { value: Math.max(0, point.flow(nozzle.link as number)), dimension: 'flow' },
              total: { value: total, dimension: 'flow' },
            },
            source: 'working range of the nozzle, or half of its rated pressure (common practice, no source)',
          },
        ];
      });
    });

function leastPressure({ model, step }: AssembledNozzle): number | undefined {
  if (model.kind === 'open_end') return undefined;
  if (model.working?.from !== undefined) return model.working.from;
  const laidFor = step.kind === 'nozzle' ? step.pressure : undefined;
  const rated = model.kind === 'fog' || model.kind === 'automatic' ? model.pressure : laidFor;
  return rated === undefined ? undefined : OF_RATED * rated;
}
