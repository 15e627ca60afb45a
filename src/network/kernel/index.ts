// AssemblyScript, compiled to WebAssembly by `npm run kernel`: the loops in which a large network spends its time.
import { blendFlows } from './guess';
import { solveHeads } from './matrix';
import { sweepPlain } from './sweep';
import { System } from './system';
import { Fold, unfoldTrees } from './unfold';

export { solveHeads } from './matrix';

/** Linearises the laws of the plain chains at their flows. */
export function linearise(system: System): void {
  sweepPlain(system, 0);
}

/** Solves for the heads, and moves the flows of the plain chains to them. Returns the position of a zero pivot, or -1. */
export function advance(system: System): i32 {
  const zeroPivot = solveHeads(system);
  if (zeroPivot < 0) sweepPlain(system, 1);
  return zeroPivot;
}

/** Unfolds the trees from the heads of the core, and linearises the laws of the plain chains. */
export function unfold(system: System, fold: Fold): void {
  unfoldTrees(system, fold);
  sweepPlain(system, 0);
}

/** Keeps the flows as those of a solution, guesses the next, and linearises the laws of the plain chains there. */
export function guess(system: System, into: usize): void {
  blendFlows(system, into);
  sweepPlain(system, 0);
}
