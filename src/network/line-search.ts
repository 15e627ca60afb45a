import type { Equations } from './equations.js';

/** Part of the overshoot that a step may leave before it is shortened. */
export const OVERSHOOT = 0.5;

/** A law counts as steeper than it looked from so many times its slope at the start. */
const PAST_THE_FALL = 1.5;
const HALVINGS = 60;
/** Where it meets the fall is found to this part of the way there. */
const MET = 0.01;

/**
 * Takes the last step anew, with the laws that turned out steeper along it than at its start as steep as they are up to where
 * they meet the fall of head that the step found. So a flow that would run past a kink, as that of an allowance that is charged
 * in full from a gallon a minute up or that of a shut valve, comes to stand at it, where cutting back the whole step would
 * stop every other flow with it. All slopes stay above nothing, so that the step still goes down the content. Returns a zero
 * pivot as `advance` does.
 */
export function retakeStep(equations: Equations): number {
  const { flow, step, losses, head, tail, tip } = equations;
  const { loss, conductance, count } = losses;
  for (let i = 0; i < count; i++) {
    const fall = head[tail[i]] - head[tip[i]];
    const end = flow[i];
    const start = end - step[i];
    const beyond = (loss[i] - fall) / step[i];
    flow[i] = start;
    if (!(beyond > 0)) {
      losses.evaluateChain(i);
      continue;
    }
    let near = start;
    let far = end;
    for (let n = 0; n < HALVINGS && Math.abs(far - near) > MET * Math.abs(far - start); n++) {
      flow[i] = (near + far) / 2;
      losses.evaluateChain(i);
      if ((loss[i] - fall) / step[i] > 0) far = flow[i];
      else near = flow[i];
    }
    flow[i] = start;
    losses.evaluateChain(i);
    const slope = (fall - loss[i]) / (far - start);
    if (slope * conductance[i] > PAST_THE_FALL) conductance[i] = 1 / slope;
  }
  return equations.advance();
}

/**
 * Cuts the last step back to where the content stops falling along it. A one-way link that the step would drive
 * backwards makes a kink there; between kinks the slope of the content rises smoothly, so that regula falsi finds
 * its zero.
 */
export function shortenStep(
  equations: Equations,
  descent: number,
  overshoot: number,
  allowed = OVERSHOOT,
): void {
  const { flow, step, losses } = equations;
  const trial = new Float64Array(flow.length);
  const count = losses.count;
  for (let i = 0; i < count; i++) trial[i] = flow[i] - step[i];
  const slopeAt = (t: number): number => {
    for (let i = 0; i < count; i++) flow[i] = trial[i] + t * step[i];
    losses.evaluate();
    return equations.measure();
  };
  let low = 0;
  let atLow = -descent;
  let high = 1;
  let atHigh = overshoot;
  // Kinks in the way, nearest first.
  const kinks: number[] = [];
  for (let i = 0; i < count; i++) {
    if (losses.oneWay[i] === 1 && trial[i] > 0 && trial[i] + step[i] < 0) kinks.push(-trial[i] / step[i]);
  }
  kinks.sort((a, b) => a - b);
  for (const kink of kinks) {
    // Just short of the kink, so that the link still counts as open.
    const at = slopeAt(kink * (1 - 1e-12));
    if (at > 0) {
      high = kink;
      atHigh = at;
      break;
    }
    const past = slopeAt(Math.min(1, kink * (1 + 1e-9) + 1e-15));
    if (past > 0) return;
    low = kink;
    atLow = past;
  }
  for (let tries = 0; tries < 40; tries++) {
    let t = low - (atLow * (high - low)) / (atHigh - atLow);
    if (!(t > low && t < high) || tries % 4 === 3) t = (low + high) / 2;
    const at = slopeAt(t);
    if (Math.abs(at) <= allowed * descent) return;
    if (at > 0) {
      high = t;
      atHigh = at;
    } else {
      low = t;
      atLow = at;
    }
  }
}
