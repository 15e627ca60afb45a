import type { StagingName } from '../assembly/assembly.js';
import type { HoseLimit } from '../limits/hose-limit.js';
import type { Measure } from '../quantity/dimension.js';

/**
 * What hazards look at of an answer, as far as they look at it. The answers themselves are made further down the house, and
 * fit these shapes.
 */

type Verdict = 'meets' | 'falls_short';

/** What a pump does to the temperature of its water; K, m3/s, s. */
export interface PumpHeat {
  name: string;
  flow: number;
  leaving?: number;
  basis: 'efficiency' | 'engine_rating' | 'not_known';
  leastFlow?: number;
  shutFlow: number;
  shutLeaving?: number;
  untilScald?: number;
  untilBoiling?: number;
}

/** A limit of the rig with its worst load. */
export interface LimitLoad {
  code: string;
  /** `casing`, `setting, by hose 1 of the lay`. */
  limit: string;
  at: string;
  allowed: Measure;
  worst: number;
  worstWhen: string;
  /** What the worst case leaves, as a part of the limit; below 0 past it. */
  margin: number;
  /** Weights without a place: the load is a least, and the margin a most. */
  unplaced?: readonly string[];
  source: string;
}

/** What an engine whose file gives no power may have had when its curve was measured. */
type UnknownPower = 'power_to_spare' | 'constant_power' | 'flat_torque';

interface Height {
  stands: 'nowhere' | 'up_to' | 'everywhere';
  upTo?: number;
}

/** What holds the pumps, and how far the verdict stands. */
export interface Running {
  pumps: readonly {
    name: string;
    limitedBy: 'governor' | 'power' | 'not_known';
    ofRatedSpeed: number;
    powerAvailable?: number;
  }[];
  highestPlace?: Height & { cases?: readonly (Height & { engine: UnknownPower })[] };
  powerBracket?: {
    pumps: readonly { name: string; ratio: number }[];
    cases: readonly { verdict: Verdict }[];
  };
}

/** What a check has found besides, for hazards that lie in the verdict rather than in a state. */
export interface Judged {
  staging: StagingName;
  stagings: readonly {
    staging: StagingName;
    verdict: Verdict;
    reachable: boolean;
    atRequiredFlow?: { pressure: number; margin: number };
  }[];
  /** Where the verdict is read. */
  judgedAt: string;
  hotDay?: {
    airTemperature: number;
    verdict: Verdict;
    cases?: readonly { engine: UnknownPower; verdict: Verdict }[];
  };
  pumpsOut: readonly {
    out: string;
    standing: readonly { check: 'works' | 'stuck_open'; backflowShut?: number }[];
  }[];
}

/** What keeps the pressure down when a line is shut. */
export interface Control {
  device?: { kind: 'relief' | 'governor'; set: number };
  /** Highest discharge with everything shut less the setting of the device, Pa. */
  overSetting?: number;
  /** What the required flow takes where the device stands, and the highest setting that every part bears, Pa. */
  needed?: number;
  highest?: { pressure: number; by: string };
  /** The greatest rise that shutting one nozzle makes elsewhere, Pa; `held`: at another nozzle. */
  lineShut?: { nozzle: string; at: string; rise: number; held: boolean };
  /** What shutting a nozzle fast makes of the pressure before it, Pa; `stated`: with a wave speed that the layout states. */
  surges: readonly { nozzle: string; stated: boolean; peak: number; hoseLimit?: HoseLimit }[];
}

export interface VerdictFacts {
  /** Pressure that the verdict turns on and its margin, Pa. */
  required: number;
  margin: number;
  reading?: number;
}

/** What the engine's tank has for the lay, m3, m3/s, s: the hose is filled first and a reserve kept back. */
export interface TankLasts {
  hoseFill: number;
  flowFull: number;
  /** Null where nothing is drawn. */
  endurance: number | null;
}
