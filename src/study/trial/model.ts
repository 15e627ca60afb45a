import type { TypingTestOrifice } from '../../catalogue/schema/typing.js';
import type { TrialReadings } from '../../readings/read-trial.js';
import type { Instrument } from '../../readings/trial-columns.js';
import { type Whitener, whitener } from '../../statistics/explain.js';
import { NoSteadyAnswer } from '../no-steady-answer.js';
import { type Refusal, unsteady } from '../refusal.js';
import type { Rig } from '../rig.js';
import type { Cause } from './causes.js';
import { instrumentDoubt, usualDoubt } from './doubt.js';
import { type Engine, type Observed, observe, type SetUp } from './observe.js';

/** One figure of the sheet. */
export interface Read {
  /** Index of its row. */
  row: number;
  instrument: Instrument;
  value: number;
}

/** The engine of a layout as it should be, with what a cause of some size makes of every reading. */
export class TrialModel {
  readonly sound: Engine;
  private readonly rig: Rig;
  private readonly plate: TypingTestOrifice;
  private readonly asked: Partial<TrialReadings>;

  constructor(rig: Rig, plate: TypingTestOrifice, asked: Partial<TrialReadings>) {
    this.rig = rig;
    this.plate = plate;
    this.asked = asked;
    this.sound = { layout: rig.layout, throttle: rig.throttle, orificeWorn: 1 };
  }

  /** What is read in set-ups with causes of some sizes; undefined where the engine has no steady state then. */
  observe(
    setUps: readonly SetUp[],
    causes: readonly Cause[],
    sizes: readonly number[],
  ): Observed[] | undefined {
    const engine = causes.reduce((one, cause, i) => cause.engine?.(one, sizes[i]) ?? one, this.sound);
    // Plumbing of its own has networks of its own, one for all set-ups.
    const rig =
      engine.layout.engine.plumbing === this.rig.layout.engine.plumbing &&
      engine.layout.supply === this.rig.layout.supply
        ? this.rig
        : this.rig.relaid(engine.layout);
    try {
      return setUps.map((setUp) => {
        const { observed } = observe(rig, engine, setUp, this.plate);
        causes.forEach(({ read }, i) => {
          const value = read && observed[read.instrument];
          if (read && value !== undefined) observed[read.instrument] = read.change(value, sizes[i]);
        });
        return observed;
      });
    } catch (error) {
      if (error instanceof NoSteadyAnswer || error instanceof RangeError) return undefined;
      throw error;
    }
  }

  /** Why the state of a set-up cannot be, with nothing wrong. */
  refusal(setUp: SetUp): Refusal | undefined {
    try {
      return observe(this.rig, this.sound, setUp, this.plate).refusal;
    } catch (error) {
      if (error instanceof NoSteadyAnswer) return unsteady(error);
      throw error;
    }
  }

  doubtOf(instrument: Instrument, value: number) {
    return instrumentDoubt(instrument, this.asked, value);
  }

  /** How readings may differ from a prediction though nothing is wrong: variances, and what hangs together. */
  covariance(setUps: readonly SetUp[], reads: readonly Read[]): number[][] {
    const predicted = this.observe(setUps, [], []);
    if (predicted === undefined) throw new TypeError('a sheet is predicted before its doubt is told');
    const at = (observed: Observed[], { row, instrument }: Read) => observed[row][instrument] ?? 0;
    const shared = usualDoubt(this.sound.layout).flatMap(({ cause, deviation }) => {
      const moved = this.observe(setUps, [cause], [deviation]);
      // Where a state cannot be any more nothing is read in it, and nothing is told by it.
      const all = moved && reads.every(({ row, instrument }) => moved[row][instrument] !== undefined);
      return all ? [reads.map((read) => at(moved, read) - at(predicted, read))] : [];
    });
    const doubts = reads.map((read) => this.doubtOf(read.instrument, at(predicted, read)));
    return reads.map((one, i) =>
      reads.map((other, j) => {
        const own = i === j ? doubts[i].single ** 2 : 0;
        const gauge = one.instrument === other.instrument ? doubts[i].common * doubts[j].common : 0;
        return shared.reduce((sum, moves) => sum + moves[i] * moves[j], own + gauge);
      }),
    );
  }

  whitener(setUps: readonly SetUp[], reads: readonly Read[]): Whitener {
    return whitener(this.covariance(setUps, reads));
  }
}
