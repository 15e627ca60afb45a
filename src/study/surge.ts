import type { OperatingPoint } from '../assembly/operating-point.js';
import type { Layout } from '../layout/layout.js';
import { surgeOfClosure, surgePressure } from '../physics/joukowsky.js';

/** Speed of a pressure wave in hose where the layout states none, m/s: the upper end of some 100 to 400, from memory. */
const HOSE_WAVE_SPEED = 400;

/** What shutting a nozzle adds to the pressure before it. */
export interface Surge {
  nozzle: string;
  velocity: number;
  waveSpeed: number;
  /** Whether the layout states the wave speed. */
  stated: boolean;
  /** s; undefined where the nozzle is taken to be slammed. */
  closingTime?: number;
  rise: number;
  /** Pressure at the nozzle before, with the rise on top, Pa. */
  peak: number;
}

/** The surge at every open nozzle of a state, largest first: Joukowsky's whole rise, or what a slower closing leaves of it. */
export function surgesOf(layout: Layout, state: OperatingPoint): Surge[] {
  const { site, elements, nozzles } = state.assembly;
  const { wave_speed, closing_time } = layout.surge ?? {};
  const waveSpeed = wave_speed ?? HOSE_WAVE_SPEED;
  const groups = new Map<number | undefined, string>();
  const lengths = new Map<string | undefined, number>();
  for (const { link, group, length = 0 } of elements) {
    groups.set(link, group);
    lengths.set(group, (lengths.get(group) ?? 0) + length);
  }
  return nozzles
    .flatMap((nozzle): Surge[] => {
      const velocity = state.velocityAt(nozzle.inlet);
      if (nozzle.state === 'shut' || !(velocity > 0)) return [];
      const length = lengths.get(groups.get(nozzle.inlet.link)) ?? 0;
      const rise =
        closing_time === undefined
          ? surgePressure(site.waterDensity, waveSpeed, velocity)
          : surgeOfClosure(site.waterDensity, waveSpeed, velocity, length, closing_time);
      return [
        {
          nozzle: nozzle.name,
          velocity,
          waveSpeed,
          stated: wave_speed !== undefined,
          closingTime: closing_time,
          rise,
          peak: state.totalPressure(nozzle.inlet) + rise,
        },
      ];
    })
    .sort((a, b) => b.rise - a.rise);
}
