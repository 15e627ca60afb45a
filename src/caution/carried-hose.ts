import { settingLimit } from '../limits/hose-limit.js';
import { grouped } from '../quantity/format.js';
import type { Hazard } from './hazard.js';

/**
 * Hose that is carried and bears less than the engine makes with its outlets shut, where no device keeps that down: whoever
 * charges it and shuts its nozzle has it at that pressure. Where there is a device its setting is held against the same limit.
 */
export const carriedHose: Hazard = ({ layout, cases, control }) => {
  const shut = cases.find(({ kind }) => kind === 'shut');
  if (shut === undefined || control === undefined || control.device) return [];
  const { point } = shut;
  const value = Math.max(...point.assembly.ends.map(({ place }) => point.totalPressure(place)));
  const over = (layout.engine.hose_carried ?? []).flatMap(({ hose, modelName }) => {
    const limit = settingLimit(hose);
    return limit && value > limit.pressure ? [{ modelName, limit }] : [];
  });
  if (over.length === 0) return [];
  const { modelName, limit } = over.reduce((kept, one) =>
    one.limit.pressure < kept.limit.pressure ? one : kept,
  );
  const others = over.length - 1;
  const more = others === 0 ? '' : `; so is it with ${grouped(others)} more kinds of it`;
  return [
    {
      code: 'carried_hose_over_limit',
      level: 'warn',
      at: modelName,
      value: { value, dimension: 'pressure' },
      limit: { value: limit.pressure, dimension: 'pressure' },
      message: `{at} is carried, and with its nozzle shut the engine holds it at {value} with nothing to relieve it; ${limit.what} is {limit}${more}`,
      action:
        'Set a relief valve or a governor to at most that figure before this hose is charged, or carry stronger hose.',
      source: limit.source,
    },
  ];
};
