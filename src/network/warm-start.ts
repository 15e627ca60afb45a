import type { Equations } from './equations.js';

/** How many solutions a guess goes by. */
const KEPT = 4;

/** Speeds nearer to each other than this, as a part of them, are one. */
const SAME_SPEED = 1e-9;

/**
 * A guess is drawn through several solutions only where their weights together, each taken as positive, come to less: with
 * more, speeds too near each other are asked about one far from them all.
 */
const MOST_WEIGHT = 100;

/**
 * A first guess from the last solutions. A change of throttle moves all flows nearly alike, by the affinity laws exactly so
 * where no height is against them: flow over speed is a smooth and slow function of speed. So where solutions differ in
 * nothing but a throttle common to all pumps, the next is looked for on the curve (a line, a parabola, a cubic) through the last of them.
 */
export class WarmStart {
  private readonly equations: Equations;
  /** Speeds of the solutions kept, those of all pumps together, the latest first; as many as there are. */
  private readonly speed: number[] = [];
  /** Their flows, by chain. */
  private readonly flow: Float64Array[] = [];
  private readonly weight: number[] = new Array<number>(KEPT).fill(0);
  /** By pump: its part of the speed in all that is kept. */
  private readonly part: number[] = [];
  /** By pump: its speed in the solution that the equations hold. */
  private readonly last: number[] = [];

  constructor(equations: Equations) {
    this.equations = equations;
  }

  /** Forgets what is kept, as something but a speed has changed. */
  forget(): void {
    this.speed.length = 0;
  }

  /** Says that the equations hold a solution at the speeds that are set. */
  solved(): void {
    const { pumps, laws } = this.equations.losses;
    for (let p = 0; p < pumps.length; p++) this.last[p] = laws.speed[pumps[p]];
  }

  /** Moves the flows from the last solution to a guess at the speeds that are set now. */
  begin(): void {
    const { last } = this;
    const { pumps, laws } = this.equations.losses;
    let before = 0;
    let now = 0;
    for (let p = 0; p < pumps.length; p++) {
      before += last[p];
      now += laws.speed[pumps[p]];
    }
    if (before === 0) return;
    let alike = true;
    for (let p = 0; p < pumps.length; p++) {
      const part = last[p] / before;
      if (Math.abs(laws.speed[pumps[p]] / now - part) > SAME_SPEED) alike = false;
      if (Math.abs(this.part[p] - part) <= SAME_SPEED) continue;
      this.part[p] = part;
      this.forget();
    }
    this.keep(before);
    if (now !== before) this.guess(now, alike ? this.speed.length : 1);
  }

  /** Keeps the flows of the solution that the equations hold. */
  private keep(speed: number): void {
    const kept = this.speed;
    let place = 0;
    while (place < kept.length && Math.abs(kept[place] - speed) > SAME_SPEED * speed) place++;
    if (place === kept.length && place < KEPT) kept.push(0);
    if (place === KEPT) place = KEPT - 1;
    const { flow } = this.equations;
    if (this.flow.length === 0) for (let k = 0; k < KEPT; k++) this.flow.push(new Float64Array(flow.length));
    const into = this.flow[place];
    for (; place > 0; place--) {
      kept[place] = kept[place - 1];
      this.flow[place] = this.flow[place - 1];
    }
    kept[0] = speed;
    this.flow[0] = into;
    for (let i = 0; i < flow.length; i++) into[i] = flow[i];
  }

  /** Draws the flows at a speed through the solutions kept, at most so many of them. */
  private guess(speed: number, most: number): void {
    const { weight } = this;
    let by = most;
    while (by > 1 && this.weigh(speed, by) > MOST_WEIGHT) by--;
    if (by === 1) weight[0] = speed / this.speed[0];
    for (let k = by; k < KEPT; k++) weight[k] = 0;
    const [first, second, third, fourth] = this.flow;
    const [a, b, c, d] = weight;
    const { flow } = this.equations;
    for (let i = 0; i < flow.length; i++) {
      flow[i] = a * first[i] + b * second[i] + c * third[i] + d * fourth[i];
    }
  }

  /** Lagrange's weights of so many solutions for flow over speed; gives their sum, each taken as positive. */
  private weigh(at: number, by: number): number {
    const { speed, weight } = this;
    let sum = 0;
    for (let j = 0; j < by; j++) {
      let own = at / speed[j];
      for (let k = 0; k < by; k++) if (k !== j) own *= (at - speed[k]) / (speed[j] - speed[k]);
      weight[j] = own;
      sum += Math.abs(own);
    }
    return sum;
  }
}
