/** The kinds of quantity that the program knows. A value is always held in the SI unit named here. */
export const SI_UNITS = {
  length: 'm',
  pressure: 'Pa',
  flow: 'm3/s',
  volume: 'm3',
  mass: 'kg',
  power: 'W',
  force: 'N',
  velocity: 'm/s',
  speed: 'rpm',
  time: 's',
  temperature: 'K',
  density: 'kg/m3',
  ratio: '1',
} as const;

export type Dimension = keyof typeof SI_UNITS;

/** A value in SI with the kind of quantity it is, so that a report can print it in the reader's units. */
export interface Measure {
  value: number;
  dimension: Dimension;
}
