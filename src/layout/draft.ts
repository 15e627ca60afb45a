import type { StepKey } from './schema/steps.js';
import type { Spot } from './spot.js';
import type { Step } from './step.js';

/** A step as it is written: repeats not yet written out, heights of the terrain not yet known. */
export interface Draft {
  key: StepKey;
  spot: Spot;
  /** The step without its label and the steps within it; undefined where it has a problem, and for a repeat. */
  step?: Step;
  /** How often a repeat goes round; one for any other step, and for a repeat with a problem. */
  count: number;
  /** Lines of a branch or siamese, and the one list of a repeat. */
  lines: DraftLine[];
}

export interface DraftLine {
  spot: Spot;
  name?: string;
  steps: Draft[];
}

/** How many steps a list becomes once its repeats are written out. */
export function expandedCount(drafts: readonly Draft[]): number {
  let total = 0;
  for (const { key, count, lines } of drafts) {
    const inside = lines.reduce((sum, line) => sum + expandedCount(line.steps), 0);
    total += key === 'repeat' ? count * inside : 1 + inside;
  }
  return total;
}

/** Whether every step of a list, and within them, could be read. */
export function isWhole(drafts: readonly Draft[]): boolean {
  return drafts.every(
    ({ key, step, lines }) =>
      (key === 'repeat' || step !== undefined) && lines.every((line) => isWhole(line.steps)),
  );
}

/**
 * The steps of one line as water meets them, with each repeat gone round twice at most: enough to see what follows
 * what, without writing thousands out.
 */
export function inOrder(drafts: readonly Draft[]): Draft[] {
  return drafts.flatMap((draft) => {
    if (draft.key !== 'repeat') return [draft];
    const once = inOrder(draft.lines[0]?.steps ?? []);
    return draft.count > 1 ? [...once, ...once] : once;
  });
}
