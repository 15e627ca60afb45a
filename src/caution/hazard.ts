import type { OperatingPoint } from '../assembly/operating-point.js';
import type { Layout } from '../layout/layout.js';
import type { Caution, CautionLevel } from './caution.js';
import type { Control, Judged, LimitLoad, PumpHeat, Running, TankLasts, VerdictFacts } from './facts.js';

/** A state that a hazard is looked for in. */
export interface HazardCase {
  /**
   * `operating` is what the question is about; `shut` has every outlet shut; `laid` is the layout as it stands; in
   * `burst` its far line has burst open, in `one_out` one of its pumps is out.
   */
  kind: 'operating' | 'shut' | 'laid' | 'laid_shut' | 'burst' | 'one_out';
  /** Said after a number: `at the required flow`. */
  when: string;
  point: OperatingPoint;
  /** The nozzle that is gone in it. */
  gone?: string;
}

export interface HazardFacts {
  layout: Layout;
  cases: readonly HazardCase[];
  /** The pumps' verdict, where there is one. */
  pumpVerdict?: 'meets' | 'falls_short';
  /** What holds the pumps, of a check. */
  running?: Running;
  verdict?: VerdictFacts;
  /** What each pump does to the temperature of its water. */
  heat?: readonly PumpHeat[];
  /** What keeps the pressure down when a line is shut. */
  control?: Control;
  /** Every limit with its loads. */
  ledger?: readonly LimitLoad[];
  judged?: Judged;
  /** How long the engine's tank lasts for the lay as it stands. */
  tank?: TankLasts;
}

/** One hazard: what it finds in a layout's states. It says nothing of a sound one. */
export type Hazard = (facts: HazardFacts) => Caution[];

const LEVELS: Record<CautionLevel, number> = { stop: 0, warn: 1, note: 2 };

/** How far over its limit a caution is, as a part of the limit. */
function excess({ value, limit }: Caution): number {
  return value && limit ? Math.abs(value.value - limit.value) / Math.abs(limit.value || 1) : 0;
}

/** What makes two cautions one: the hazard and its place; of hose, which is counted, the hazard alone. */
export function keyOf({ code, at }: Caution): string {
  return code.startsWith('hose_') ? code : `${code} at ${at}`;
}

/** Most dangerous first, and each hazard at each place once, by its worst state; of hose, which is counted, once in all. */
export function ranked(cautions: readonly Caution[]): Caution[] {
  // Hose that is over a limit in one state is not told of again as near it in another.
  const over = new Set(cautions.filter(({ code }) => code.startsWith('hose_over_')).map(({ at }) => at));
  const told = cautions.filter(({ code, at }) => code !== 'hose_near_service_test' || !over.has(at));
  const sorted = told.sort((a, b) => LEVELS[a.level] - LEVELS[b.level] || excess(b) - excess(a));
  const seen = new Set<string>();
  return sorted.filter((caution) => {
    const key = keyOf(caution);
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}
