import { type Impossibility, reasonOf } from '../limits/impossible.js';
import type { UnitSystem } from '../quantity/format.js';
import { type Figures, figuresIn } from './figures.js';
import { statementText } from './sentence.js';

/** Why a state cannot be, as a clause. */
export const impossibleText = (impossible: Impossibility, figures: Figures): string =>
  statementText({ ...reasonOf(impossible), source: undefined }, figures);

/** The same for a program; null where the state stands. */
export const impossibleTree = (impossible: Impossibility | undefined, units: UnitSystem): string | null =>
  impossible ? impossibleText(impossible, figuresIn(units)) : null;

/** As a cell says it. */
export const IMPOSSIBLE_WORDS: Record<Impossibility['code'], string> = {
  water_parts: 'cannot draw it',
  suction_short: 'cavitates',
  past_curve: 'cannot pass it',
  hose_flat: 'hose falls flat',
};
