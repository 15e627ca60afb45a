import { INSTRUMENTS, type Instrument } from '../../readings/trial-columns.js';
import type { Ranked } from './diagnose.js';
import type { TrialModel } from './model.js';
import type { SetUp } from './observe.js';

/** A reading that would tell two explanations apart. */
export interface TellingReading {
  setUp: SetUp;
  instrument: Instrument;
  /** With another gauge or meter than the one that was read, as that itself is in question. */
  withAnother: boolean;
  /** What it would be under each. */
  first: number;
  second: number;
  /** How far apart these are, in deviations of such a reading. */
  apart: number;
}

/** Two deviations and more tell two explanations apart. */
const TELLS = 2;

/** The reading not yet taken under which two explanations lie farthest apart; undefined where none tells them. */
export function tellingReading(
  model: TrialModel,
  taken: readonly SetUp[],
  one: Ranked,
  other: Ranked,
  read: (setUp: SetUp, instrument: Instrument) => boolean,
): TellingReading | undefined {
  let best: TellingReading | undefined;
  for (const setUp of setUpsFor(model, taken)) {
    const first = observedUnder(model, setUp, one);
    const second = observedUnder(model, setUp, other);
    if (first === undefined || second === undefined) continue;
    for (const instrument of Object.keys(INSTRUMENTS) as Instrument[]) {
      const again = read(setUp, instrument);
      const suspect = [one, other].some(({ causes }) =>
        causes.some((cause) => cause.read?.instrument === instrument),
      );
      // The same reading once more tells nothing new, unless it is another gauge that gives it.
      if (again && !suspect) continue;
      const [a, b] = [first[instrument], second[instrument]];
      if (a === undefined || b === undefined) continue;
      const { common, single } = model.doubtOf(instrument, Math.max(Math.abs(a), Math.abs(b)));
      const apart = Math.abs(a - b) / Math.hypot(common, single);
      if (apart >= TELLS && (best === undefined || apart > best.apart))
        best = { setUp, instrument, withAnother: suspect, first: a, second: b, apart };
    }
  }
  return best;
}

/** What a sound instrument would read: causes that are an instrument's own are left out. */
function observedUnder(model: TrialModel, setUp: SetUp, { causes, sizes }: Ranked) {
  const real = causes.flatMap((cause, i) => (cause.engine ? [{ cause, size: sizes[i] }] : []));
  return model.observe(
    [setUp],
    real.map(({ cause }) => cause),
    real.map(({ size }) => size),
  )?.[0];
}

/** The set-ups of the sheet, and each pump alone and both together with the outlets shut and at each orifice of the sheet. */
function setUpsFor(model: TrialModel, taken: readonly SetUp[]): SetUp[] {
  const { layout } = model.sound;
  const stagings = new Set(taken.map(({ staging }) => staging));
  for (const one of layout.engine.pumps.b ? (['a', 'b', layout.staging] as const) : (['a'] as const))
    stagings.add(one);
  const bores = new Set<number | undefined>([undefined, ...taken.map(({ orifice }) => orifice)]);
  return [...stagings].flatMap((staging) =>
    [...bores].map((orifice) => ({ staging, ...(orifice !== undefined && { orifice }) })),
  );
}
