// AssemblyScript, compiled to WebAssembly by `npm run kernel`: the loops in which a large network spends its time.
import { solveHeads } from './matrix';
import { sweepPlain } from './sweep';
import { System } from './system';

export { guess } from './guess';

export function linearise(system: System): void {
  sweepPlain(system, 0);
}

export function advance(system: System): i32 {
  const zeroPivot = solveHeads(system);
  if (zeroPivot < 0) sweepPlain(system, 1);
  return zeroPivot;
}
