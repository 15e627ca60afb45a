import type { Dimension } from './dimension.js';

export interface Bounds {
  /** SI, ends included. */
  lowest: number;
  highest: number;
  /** The least of what must be more than zero. */
  least: number;
}

/**
 * What a quantity may be where its field says nothing narrower: wider than anything that a fire engine has or meets, so that
 * only a slip of the pen oversteps it, and narrow enough for every law to be reckoned with. Common practice, no source.
 */
export const USUAL_BOUNDS: Record<Dimension, Bounds> = {
  /** To 100 km. */
  length: { lowest: -1e5, highest: 1e5, least: 1e-5 },
  /** To 5,000 psi, from 0.015 psi. */
  pressure: { lowest: -1e5, highest: 3.5e7, least: 100 },
  /** To 16,000 gpm, from what a small engine burns in fuel: 0.01 gal/h. */
  flow: { lowest: -1, highest: 1, least: 1e-8 },
  volume: { lowest: -1e3, highest: 1e3, least: 1e-6 },
  mass: { lowest: -1e5, highest: 1e5, least: 1e-3 },
  power: { lowest: -5e6, highest: 5e6, least: 10 },
  force: { lowest: -1e7, highest: 1e7, least: 1e-3 },
  velocity: { lowest: -2e3, highest: 2e3, least: 1e-3 },
  speed: { lowest: -1e5, highest: 1e5, least: 1 },
  time: { lowest: -1e9, highest: 1e9, least: 1e-3 },
  temperature: { lowest: 200, highest: 500, least: 200 },
  density: { lowest: 0, highest: 2e4, least: 0.1 },
  ratio: { lowest: -10, highest: 10, least: 1e-4 },
};
