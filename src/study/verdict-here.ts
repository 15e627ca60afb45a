import type { OperatingPoint } from '../assembly/operating-point.js';
import type { TypingAsked } from '../layout/layout.js';
import type { VerdictUnder } from './answer.js';
import { type EndJudged, judge } from './judge.js';
import { limitOf } from './pump-answer.js';
import type { Rig } from './rig.js';

/** The pumps' verdict in the layout's staging as a row of a table tells it: place by place, day by day. */
export function verdictHere(rig: Rig, typing: TypingAsked): VerdictUnder {
  return verdictUnder(judge(rig, rig.layout.staging, typing));
}

/** A verdict with the state at the required flow that it was read in, which may be one that cannot be. */
export function judgeHere(rig: Rig, typing: TypingAsked): { here: VerdictUnder; state: OperatingPoint } {
  const judged = judge(rig, rig.layout.staging, typing);
  return { here: verdictUnder(judged), state: judged.worst.drawn.state };
}

export function verdictUnder({ verdict, worst, orifice, slack }: EndJudged): VerdictUnder {
  const { impossible, pressure, margin, drawn } = worst;
  const reading = orifice && !orifice.impossible ? orifice.answer : undefined;
  return {
    verdict,
    pressure: impossible ? undefined : pressure,
    margin: impossible ? undefined : margin,
    reading: reading?.reading,
    readingMargin: reading?.margin,
    impossible: impossible ?? orifice?.impossible,
    pumps: drawn.state.assembly.pumps
      .filter((pump) => !pump.booster)
      .map((pump) => ({ name: pump.name, limitedBy: limitOf(drawn.state, pump) })),
    slack,
  };
}
