/**
 * Where the equations of one network lie in memory: sizes first, then the addresses of the arrays, in the order of
 * `src/network/workspace.ts`. Chains and positions as there.
 */
@unmanaged
export class System {
  // Chains: those that end at a fixed head, those and all other plain ones, all.
  outletEnd: i32;
  plainEnd: i32;
  count: i32;
  // Positions: columns of one entry each, unknown heads, all; and entries with the one that is of no use.
  singles: i32;
  size: i32;
  room: i32;
  entryCount: i32;
  // By chain.
  tail: usize;
  tip: usize;
  entry: usize;
  flow: usize;
  step: usize;
  loss: usize;
  conductance: usize;
  resistance: usize;
  linearBelow: usize;
  // By position.
  head: usize;
  demand: usize;
  diagonal: usize;
  rightSide: usize;
  // The elimination plan, and what it works on.
  entries: usize;
  columnStart: usize;
  row: usize;
  targetStart: usize;
  target: usize;
  // What the last sweep found: descent, along, worst head, worst correction.
  found: usize;
  // By solution kept: its weight in a guess, and its flows.
  weight: usize;
  first: usize;
  second: usize;
  third: usize;
  fourth: usize;
}
