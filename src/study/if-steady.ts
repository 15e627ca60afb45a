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
