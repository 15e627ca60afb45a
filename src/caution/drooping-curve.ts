import type { Hazard } from './hazard.js';

/** A pump whose head rises with flow before it falls, set to work in parallel: one header pressure has two flows. */
export const droopingCurve: Hazard = ({ cases }) => {
  const parallel = cases.find(({ point }) => point.assembly.staging === 'parallel');
  if (parallel === undefined) return [];
  return parallel.point.assembly.pumps
    .filter((pump) => !pump.booster && pump.curve.droops())
    .map((pump) => ({
      code: 'drooping_curve',
      level: 'warn',
      at: pump.name,
      message:
        'The curve of {at} rises before it falls: in parallel one pressure has two flows, and the pumps can hunt or one be shut out',
      action:
        'Keep the flow well beyond the top of the curve, run one pump, or use series. Measure shutoff again if in doubt.',
      source: 'general pump texts: drooping curves are unsuited to parallel (common practice, no source)',
    }));
};
