import type { Dimension } from '../quantity/dimension.js';
import type { Column } from './columns.js';

type Measured = Column & { dimension: Dimension };
const measured = (name: string, dimension: Dimension, example: string, also: string[] = []): Measured => ({
  name,
  dimension,
  example,
  also,
});

/** Columns of readings on a bench. */
export const BENCH = {
  flow: measured('flow', 'flow', 'flow gpm'),
  discharge: measured('discharge', 'pressure', 'discharge psi', ['discharge pressure', 'discharge gauge']),
  inlet: measured('inlet', 'pressure', 'inlet psi', ['intake', 'suction', 'inlet pressure', 'inlet gauge']),
  vacuum: measured('vacuum', 'pressure', 'vacuum inHg', ['inlet vacuum', 'suction vacuum']),
  speed: measured('speed', 'speed', 'speed rpm', ['pump speed']),
} as const;

/** What is set for all readings of a bench. */
export const BENCH_SET = {
  title: { name: 'title', example: 'title, Pump 614-A on the bench' },
  pump: {
    name: 'pump',
    example: 'pump, demo-highlift',
    also: ['against', 'compared with'],
  },
  ratedSpeed: measured('rated speed', 'speed', 'rated speed, 6500 rpm'),
  water: measured('water temperature', 'temperature', 'water temperature, 60 degF', ['water']),
  air: measured('air temperature', 'temperature', 'air temperature, 59 degF'),
  elevation: measured('elevation', 'length', 'elevation, 1200 ft', ['place elevation']),
  hours: measured('hours', 'time', 'hours, 212 h', ['running hours']),
  dischargeBore: measured('discharge bore', 'length', 'discharge bore, 1.61 in', ['discharge gauge bore']),
  dischargeHeight: measured('discharge height', 'length', 'discharge height, 18 in', [
    'discharge gauge height',
  ]),
  dischargeError: measured('discharge gauge error', 'pressure', 'discharge gauge error, 4 psi'),
  inletBore: measured('inlet bore', 'length', 'inlet bore, 2.07 in', ['inlet gauge bore', 'intake bore']),
  inletHeight: measured('inlet height', 'length', 'inlet height, 0 in', [
    'inlet gauge height',
    'intake height',
  ]),
} as const;
