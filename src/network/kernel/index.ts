// AssemblyScript, compiled to WebAssembly by `npm run kernel`: the loops in which a large network spends its time.
export { guess } from './guess';
export { solveHeads } from './matrix';
export { sweepPlain } from './sweep';
