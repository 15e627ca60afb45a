import type { TypingAsked } from '../layout/layout.js';
import { NoSteadyAnswer } from './no-steady-answer.js';
import type { Rig } from './rig.js';
import { slackOf, verdictHere } from './verdict-here.js';

/**
 * The least of the margins that a rig's verdict stands on, as a part of what is asked. A pump so weak that the draw sucks its own
 * plumbing dry has no steady answer, and falls short.
 */
export function slackHere(rig: Rig, typing: TypingAsked): number {
  try {
    return slackOf(verdictHere(rig, typing));
  } catch (error) {
    if (error instanceof NoSteadyAnswer) return -1;
    throw error;
  }
}
