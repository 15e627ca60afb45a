import type { Dimension } from '../quantity/dimension.js';
import type { Column } from './columns.js';

export type Measured = Column & { dimension: Dimension };
const measured = (name: string, dimension: Dimension, example: string, also: string[] = []): Measured => ({
  name,
  dimension,
  example,
  also,
});

/** What is set up for a reading. */
export const SET_UP = {
  staging: { name: 'staging', example: 'staging' },
  orifice: measured('orifice', 'length', 'orifice in', ['bore']),
} as const;

/** What is read; the names are those of the instruments. */
export const INSTRUMENTS = {
  tee: measured('tee', 'pressure', 'tee psi', ['orifice gauge', 'reading']),
  panel: measured('panel', 'pressure', 'panel psi', ['panel gauge']),
  flow: measured('flow', 'flow', 'flow gpm', ['meter']),
  'discharge a': measured('discharge a', 'pressure', 'discharge a psi'),
  'discharge b': measured('discharge b', 'pressure', 'discharge b psi'),
  'inlet a': measured('inlet a', 'pressure', 'inlet a psi', ['intake a', 'suction a']),
  'inlet b': measured('inlet b', 'pressure', 'inlet b psi', ['intake b', 'suction b']),
  'speed a': measured('speed a', 'speed', 'speed a rpm'),
  'speed b': measured('speed b', 'speed', 'speed b rpm'),
} as const satisfies Record<string, Measured>;

export type Instrument = keyof typeof INSTRUMENTS;

export const TRIAL_SET = {
  title: { name: 'title', example: 'title, Acceptance of Engine 614' },
  date: { name: 'date', example: 'date, 2026-05-01' },
  gaugeError: measured('gauge error', 'pressure', 'gauge error, 4 psi'),
  inletError: measured('inlet gauge error', 'pressure', 'inlet gauge error, 0.5 psi'),
  meterError: measured('meter error', 'ratio', 'meter error, 3 %'),
  speedError: measured('tachometer error', 'ratio', 'tachometer error, 0.5 %'),
} as const;
