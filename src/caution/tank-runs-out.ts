import type { OperatingPoint } from '../assembly/operating-point.js';
import { STANDSTILL } from '../assembly/standstill.js';
import { contentPerLength } from '../catalogue/schema/hose.js';
import { TANK_RESERVE } from '../limits/tank-reserve.js';
import type { Hazard } from './hazard.js';

/** Water for less time than this leaves none to bring more, s. Common practice, no source. */
const SHORT = 2 * 60;
/** Hose that fills from the tank before anything flows, and a tank that is soon down to its reserve. */
export const tankRunsOut: Hazard = ({ layout, cases }) => {
  const { supply, engine } = layout;
  const laid = cases.find(({ kind }) => kind === 'laid');
  if (supply.kind !== 'tank' || engine.tank === undefined || laid === undefined) return [];
  const fill = lineFill(laid.point);
  const usable = engine.tank.capacity * (1 - TANK_RESERVE) - fill;
  const drawn = drawnFrom(laid.point);
  const lasts = drawn > STANDSTILL ? Math.max(0, usable) / drawn : Number.POSITIVE_INFINITY;
  if (lasts >= SHORT) return [];
  return [
    {
      code: 'tank_runs_out',
      level: 'warn',
      at: 'the tank',
      value: { value: lasts, dimension: 'time' },
      limit: { value: SHORT, dimension: 'time' },
      message:
        'The lay takes {fill} to fill and then draws {drawn}: with a tenth of the tank kept back the water lasts {value}',
      action:
        'Shut nozzles, bring a tender or draft before the lay is charged, and count the time of its round trip.',
      values: { fill: { value: fill, dimension: 'volume' }, drawn: { value: drawn, dimension: 'flow' } },
      source:
        'Interagency Standards for Fire and Fire Aviation Operations, chapter 14 (reserve of 10 %); two minutes are common practice, no source',
    },
  ];
};

/** Water that the hose on the ground holds, m3. */
function lineFill(point: OperatingPoint): number {
  return point.assembly.elements.reduce((sum, { step, lines }) => {
    if (step?.kind !== 'hose') return sum;
    return sum + contentPerLength(step.hose) * step.length * lines;
  }, 0);
}

function drawnFrom(point: OperatingPoint): number {
  const { network, source } = point.assembly;
  return network.links.reduce((sum, link, index) => {
    if (link.from === source.node) return sum + point.flow(index);
    return link.to === source.node ? sum - point.flow(index) : sum;
  }, 0);
}
