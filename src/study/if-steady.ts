import { NoSteadyAnswer } from './no-steady-answer.js';

/** What a side question answers, or nothing where the network that it is asked of has no steady answer. */
export function ifSteady<T>(ask: () => T): T | undefined {
  try {
    return ask();
  } catch (error) {
    if (error instanceof NoSteadyAnswer) return undefined;
    throw error;
  }
}

/** Asks what stands beside the verdict; where that has no steady state it is left out by its name, and the verdict stands. */
export type Beside = <T>(what: string, ask: () => T) => T | undefined;

export function besideInto(leftOut: string[]): Beside {
  return (what, ask) => {
    try {
      return ask();
    } catch (error) {
      if (!(error instanceof NoSteadyAnswer)) throw error;
      leftOut.push(what);
      return undefined;
    }
  };
}
