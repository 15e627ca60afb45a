import type { OperatingPoint } from '../assembly/operating-point.js';
import { flowsThrough, hoseLoads, isSoft, lowestAlong } from '../limits/hose-load.js';
import { boilingPressure } from '../limits/impossible.js';
import type { Caution } from './caution.js';
import type { Hazard } from './hazard.js';

/** Hose that stands below the pressure of the air somewhere, as on a ridge that the lay goes over: soft hose falls flat. */
export const ridgePressure: Hazard = ({ cases }) =>
  cases.flatMap(({ when, point }): Caution[] => {
    const points = lowest(point);
    if (points === undefined) return [];
    // Water parts before it can be pulled like this: the answer itself is then none.
    const parts = points.pressure <= boilingPressure(point);
    return [
      {
        code: 'hose_below_air',
        level: parts ? 'stop' : 'warn',
        at: points.name,
        ...(parts
          ? { limit: { value: boilingPressure(point), dimension: 'pressure' as const } }
          : {
              value: { value: points.pressure, dimension: 'pressure' as const },
              limit: { value: 0, dimension: 'pressure' as const },
            }),
        message: `The hose at {at}, {height} ${points.height < 0 ? 'below' : 'above'} the pump, ${parts ? 'would have to stand below {limit}, where water boils,' : 'stands at {value}'} ${when}: below the pressure of the air soft hose falls flat, and no figure beyond it holds`,
        action:
          'Let less water out beyond this point (smaller tips, nozzles part shut), or add pressure before it.',
        values: { height: { value: Math.abs(points.height), dimension: 'length' } },
        source: 'lay-flat hose has no strength against the air (common practice, no source)',
      },
    ];
  });

function lowest(point: OperatingPoint) {
  const low = hoseLoads(point)
    .filter((load) => load.lowest < 0 && isSoft(load) && flowsThrough(point, load.element))
    .map(({ element }) => lowestAlong(point, element));
  return low.length === 0
    ? undefined
    : low.reduce((kept, one) => (one.pressure < kept.pressure ? one : kept));
}
