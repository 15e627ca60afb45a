import type { Caution } from './caution.js';
import type { LimitLoad } from './facts.js';
import type { HazardFacts } from './hazard.js';

/** Cautions of the lines of the ledger that have a code and are past their limit. */
export function pastLimit(
  { ledger = [] }: HazardFacts,
  code: string,
  say: (line: LimitLoad) => Pick<Caution, 'level' | 'message' | 'action'>,
): Caution[] {
  return ledger
    .filter((line) => line.code === code && line.margin < 0)
    .map((line) => ({
      code,
      at: line.at,
      value: { value: line.worst, dimension: line.allowed.dimension },
      limit: line.allowed,
      source: line.source,
      ...say(line),
    }));
}
