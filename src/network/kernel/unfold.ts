import { at, put, whole } from './memory';
import { System } from './system';

/** Where the fold of a network's trees lies in memory: sizes, then the addresses of the arrays of `src/network/tree-fold.ts`. */
@unmanaged
export class Fold {
  folded: i32;
  outlets: i32;
  // By folded node, leaves first.
  node: usize;
  chain: usize;
  into: usize;
  sign: usize;
  upTo: usize;
  share: usize;
  height: usize;
  // By position.
  drawn: usize;
  // By chain that ends at a fixed head.
  outlet: usize;
  outletAt: usize;
  outletTo: usize;
  outletSign: usize;
  outletShare: usize;
}

/** Fills the heads and flows of all beyond the core from the heads that stand at its nodes. */
export function unfoldTrees(system: System, fold: Fold): void {
  const head = system.head;
  const flow = system.flow;
  const node = fold.node;
  const chain = fold.chain;
  const into = fold.into;
  const sign = fold.sign;
  const upTo = fold.upTo;
  const share = fold.share;
  const height = fold.height;
  const drawn = fold.drawn;
  for (let i: i32 = fold.folded - 1; i >= 0; i--) {
    const here = whole(node, i);
    const upstream = at(head, whole(into, i));
    const squared = (upstream - at(height, i)) * at(share, i);
    put(head, here, upstream - at(upTo, i) * squared);
    put(flow, whole(chain, i), at(sign, i) * (root(squared) + at(drawn, here)));
  }
  const outlet = fold.outlet;
  const outletAt = fold.outletAt;
  const outletTo = fold.outletTo;
  const outletSign = fold.outletSign;
  const outletShare = fold.outletShare;
  const outlets = fold.outlets;
  for (let i: i32 = 0; i < outlets; i++) {
    const fall = at(head, whole(outletAt, i)) - at(head, whole(outletTo, i));
    put(flow, whole(outlet, i), at(outletSign, i) * root(fall * at(outletShare, i)));
  }
}

/** The root of a number's size, with its sign. */
function root(squared: f64): f64 {
  return copysign(sqrt(abs(squared)), squared);
}
