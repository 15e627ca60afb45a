import type { Hazard } from './hazard.js';

/** Water for less time than this leaves none to bring more, s. Common practice, no source. */
const SHORT = 2 * 60;

/** Hose that fills from the tank before anything flows, and a tank that is soon down to its reserve. */
export const tankRunsOut: Hazard = ({ tank }) => {
  if (tank === undefined || tank.endurance === null || tank.endurance >= SHORT) return [];
  const { endurance, hoseFill, flowFull } = tank;
  return [
    {
      code: 'tank_runs_out',
      level: 'warn',
      at: 'the tank',
      value: { value: endurance, dimension: 'time' },
      limit: { value: SHORT, dimension: 'time' },
      message:
        'The lay takes {fill} to fill and then draws {drawn}: with a tenth of the tank kept back the water lasts {value}',
      action:
        'Shut nozzles, bring a tender or draft before the lay is charged, and count the time of its round trip.',
      values: {
        fill: { value: hoseFill, dimension: 'volume' },
        drawn: { value: flowFull, dimension: 'flow' },
      },
      source:
        'Interagency Standards for Fire and Fire Aviation Operations, chapter 14 (reserve of 10 %); two minutes are common practice, no source',
    },
  ];
};
