import type { OperatingPoint } from '../assembly/operating-point.js';
import type { Impossibility } from '../limits/impossible.js';
import { type Gated, gated } from './gated.js';
import { lowestSpeed } from './governor.js';

/** What a search for a throttle looks at, and what it is looking for. */
export interface ThrottleSearch {
  /** Solved with the engine's pumps at a part of governed speed. */
  at(speed: number): OperatingPoint;
  /** Whether every need is met; more speed never undoes it. */
  serves(point: OperatingPoint): boolean;
  /** The highest speed that is tried. */
  most: number;
}

/** What a search came to: the least speed that serves in a state that can be, or why there is none. */
export interface ThrottleFound {
  /** Undefined where none serves in a state that can be. */
  speed?: number;
  /** Why no speed at which the needs are met can be; undefined where not even the highest speed meets them. */
  why?: Impossibility;
}

/** Speeds that are looked at between the first that serves and the highest; a window narrower than a step may be missed. */
const STEPS = 40;
/** The edge of a window is found to this. */
const EDGE_FOUND = 1e-6;

/**
 * The least throttle at which the needs are met and the whole state can be. More speed never takes from a nozzle, so that the
 * first is closed in on; what makes a state impossible may come and go with speed (a ridge fills, a curve ends), so that
 * from there on windows are looked for step by step, and the foot of the first one closed in on.
 */
export function leastThrottle({ at, serves, most }: ThrottleSearch): ThrottleFound {
  const look = (speed: number): Gated | undefined => gated(() => at(speed));
  const holds = (state: Gated | undefined) => state !== undefined && serves(state.point);
  const first = lowestSpeed((speed) => holds(look(speed)), most);
  if (first === undefined) return {};
  const stands = (state: Gated | undefined) => holds(state) && state?.why === undefined;
  const lowest = look(first);
  if (stands(lowest)) return { speed: first };
  let below = first;
  for (let step = 1; step <= STEPS; step++) {
    const speed = first + ((most - first) * step) / STEPS;
    if (!stands(look(speed))) {
      below = speed;
      continue;
    }
    let high = speed;
    while (high - below > EDGE_FOUND) {
      const middle = (below + high) / 2;
      if (stands(look(middle))) high = middle;
      else below = middle;
    }
    return { speed: high };
  }
  return { why: lowest?.why };
}
