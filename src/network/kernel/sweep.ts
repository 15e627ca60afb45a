import { at, put, whole } from './memory';
import { System } from './system';

/** Least slope used in the linearisation, m per m3/s: LEAST_SLOPE of chain-losses.ts. */
const LEAST_SLOPE: f64 = 1e-3;

/**
 * Moves the flow of every plain chain to where its linearised law meets the heads, linearises anew there and judges the
 * outcome. The law is loss = resistance q |q|, linear below a flow. `moving` is 0 to linearise at the flows as they are.
 */
export function sweepPlain(system: System, moving: f64): void {
  const tail = system.tail;
  const tip = system.tip;
  const head = system.head;
  const flow = system.flow;
  const step = system.step;
  const loss = system.loss;
  const conductance = system.conductance;
  const resistance = system.resistance;
  const linearBelow = system.linearBelow;
  const end = system.plainEnd;
  let descent: f64 = 0;
  let along: f64 = 0;
  let worstHead: f64 = 0;
  let worstCorrection: f64 = 0;
  for (let i: i32 = 0; i < end; i++) {
    const fall = at(head, whole(tail, i)) - at(head, whole(tip, i));
    const excess = fall - at(loss, i);
    const change = moving * excess * at(conductance, i);
    const q = at(flow, i) + change;
    put(step, i, change);
    put(flow, i, q);
    descent += excess * change;
    const size = abs(q);
    const linear = at(linearBelow, i);
    const r = at(resistance, i) * max(size, linear);
    const slope = size < linear ? r : r + r;
    const lost = r * q;
    const c = 1.0 / max(slope, LEAST_SLOPE);
    put(loss, i, lost);
    put(conductance, i, c);
    const residual = fall - lost;
    along -= residual * change;
    const out = abs(residual);
    worstHead = max(worstHead, out);
    worstCorrection = max(worstCorrection, out * c);
  }
  put(system.found, 0, descent);
  put(system.found, 1, along);
  put(system.found, 2, worstHead);
  put(system.found, 3, worstCorrection);
}
