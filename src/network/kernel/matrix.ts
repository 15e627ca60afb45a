import { at, put, whole } from './memory';
import { System } from './system';

/**
 * Solves for the shift of every head at which the flows of the linearised laws balance, and adds it. The matrix is
 * symmetric and sparse; it is factored in place along the elimination plan (L D L^T without pivoting, which is safe for
 * the diagonally dominant matrix that conductances make). Returns the position of a zero pivot, or -1.
 */
export function solveHeads(system: System): i32 {
  clear(system);
  assemble(system);
  let zero = eliminateSingles(system);
  if (zero >= 0) return zero;
  zero = eliminate(system);
  if (zero >= 0) return zero;
  substitute(system);
  substituteSingles(system);
  return -1;
}

function clear(system: System): void {
  const room = system.room;
  const entryCount = system.entryCount;
  const demand = system.demand;
  const diagonal = system.diagonal;
  const rightSide = system.rightSide;
  const entries = system.entries;
  for (let k: i32 = 0; k < room; k++) {
    put(diagonal, k, 0);
    put(rightSide, k, -at(demand, k));
  }
  for (let k: i32 = 0; k < entryCount; k++) put(entries, k, 0);
}

function assemble(system: System): void {
  const tail = system.tail;
  const tip = system.tip;
  const head = system.head;
  const flow = system.flow;
  const loss = system.loss;
  const conductance = system.conductance;
  const entry = system.entry;
  const diagonal = system.diagonal;
  const rightSide = system.rightSide;
  const entries = system.entries;
  const outletEnd = system.outletEnd;
  const count = system.count;
  // What ends at a fixed head adds to one node only.
  for (let i: i32 = 0; i < outletEnd; i++) {
    const a = whole(tail, i);
    const c = at(conductance, i);
    const carried = at(flow, i) + (at(head, a) - at(head, whole(tip, i)) - at(loss, i)) * c;
    put(diagonal, a, at(diagonal, a) + c);
    put(rightSide, a, at(rightSide, a) - carried);
  }
  for (let i: i32 = outletEnd; i < count; i++) {
    const a = whole(tail, i);
    const b = whole(tip, i);
    const c = at(conductance, i);
    const carried = at(flow, i) + (at(head, a) - at(head, b) - at(loss, i)) * c;
    put(diagonal, a, at(diagonal, a) + c);
    put(diagonal, b, at(diagonal, b) + c);
    put(rightSide, a, at(rightSide, a) - carried);
    put(rightSide, b, at(rightSide, b) + carried);
    const e = whole(entry, i);
    put(entries, e, at(entries, e) - c);
  }
}

/** Eliminates the columns of one entry each, where no product lands: those of a tree's leaves, taken off one by one. */
function eliminateSingles(system: System): i32 {
  const diagonal = system.diagonal;
  const rightSide = system.rightSide;
  const entries = system.entries;
  const row = system.row;
  const end = system.singles;
  for (let k: i32 = 0; k < end; k++) {
    const pivot = at(diagonal, k);
    if (pivot === 0) return k;
    const inverse = 1.0 / pivot;
    const own = at(rightSide, k) * inverse;
    const value = at(entries, k);
    const into = whole(row, k);
    put(diagonal, k, inverse);
    put(rightSide, k, own);
    put(diagonal, into, at(diagonal, into) - value * value * inverse);
    put(rightSide, into, at(rightSide, into) - value * own);
  }
  return -1;
}

function substituteSingles(system: System): void {
  const diagonal = system.diagonal;
  const rightSide = system.rightSide;
  const entries = system.entries;
  const row = system.row;
  const head = system.head;
  for (let k: i32 = system.singles - 1; k >= 0; k--) {
    const own = at(rightSide, k) - at(entries, k) * at(rightSide, whole(row, k)) * at(diagonal, k);
    put(rightSide, k, own);
    put(head, k, at(head, k) + own);
  }
}

function eliminate(system: System): i32 {
  const diagonal = system.diagonal;
  const rightSide = system.rightSide;
  const entries = system.entries;
  const columnStart = system.columnStart;
  const row = system.row;
  const targetStart = system.targetStart;
  const target = system.target;
  const size = system.size;
  for (let k: i32 = system.singles; k < size; k++) {
    const pivot = at(diagonal, k);
    if (pivot === 0) return k;
    const inverse = 1.0 / pivot;
    const own = at(rightSide, k) * inverse;
    put(diagonal, k, inverse);
    put(rightSide, k, own);
    const end = whole(columnStart, k + 1);
    let t = whole(targetStart, k);
    for (let a: i32 = whole(columnStart, k); a < end; a++) {
      const value = at(entries, a);
      const factor = value * inverse;
      const into = whole(row, a);
      put(diagonal, into, at(diagonal, into) - value * factor);
      put(rightSide, into, at(rightSide, into) - value * own);
      for (let b: i32 = a + 1; b < end; b++) {
        const e = whole(target, t++);
        put(entries, e, at(entries, e) - factor * at(entries, b));
      }
    }
  }
  return -1;
}

function substitute(system: System): void {
  const diagonal = system.diagonal;
  const rightSide = system.rightSide;
  const entries = system.entries;
  const columnStart = system.columnStart;
  const row = system.row;
  const head = system.head;
  const singles = system.singles;
  for (let k: i32 = system.size - 1; k >= singles; k--) {
    let sum: f64 = 0;
    const end = whole(columnStart, k + 1);
    for (let a: i32 = whole(columnStart, k); a < end; a++) {
      sum += at(entries, a) * at(rightSide, whole(row, a));
    }
    const own = at(rightSide, k) - sum * at(diagonal, k);
    put(rightSide, k, own);
    put(head, k, at(head, k) + own);
  }
}
