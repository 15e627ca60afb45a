import { shortOfLeast } from '../assembly/nozzle-needs.js';
import type { Caution } from './caution.js';
import type { Hazard } from './hazard.js';

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
        const short = shortOfLeast(point, nozzle);
        if (short === undefined) return [];
        // Where water does not come up to an open nozzle, the air stands in it.
        const dry = short.pressure < 0;
        const value = Math.max(0, short.pressure);
        const limit = short.least.pressure;
        const alone = open.length === 1;
        return [
          {
            code: 'nozzle_starved',
            level: 'warn',
            at: nozzle.name,
            value: { value, dimension: 'pressure' },
            limit: { value: limit, dimension: 'pressure' },
            message: dry
              ? `No water reaches {at} ${when}: it needs {limit}`
              : alone
                ? `{at} gets {value} ${when}, below the {limit} that it needs`
                : `{at} gets {value} and {own} ${when}, below the {limit} that it needs: the first hose carries {total} for ${open.length} nozzles, and no one flow holds from end to end`,
            action:
              'Shut a lateral, lay a wider trunk, raise the throttle within the limits, or set a booster.',
            values: {
              own: { value: Math.max(0, point.flow(nozzle.link as number)), dimension: 'flow' },
              total: { value: total, dimension: 'flow' },
            },
            source: short.least.source,
          },
        ];
      });
    });
