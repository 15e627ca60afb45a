import type { Equations } from './equations.js';
import { PAST } from './workspace.js';

/** Speeds nearer to each other than this, as a part of them, are one. */
const SAME_SPEED = 1e-9;

/**
 * A guess is drawn through several solutions only where their weights together, each taken as positive, come to less: with
 * more, speeds too near each other are asked about one far from them all.
 */
const MOST_WEIGHT = 30;

/**
 * A first guess from the last solutions. A change of throttle moves all flows nearly alike, by the affinity laws exactly so
 * where no height is against them: flow over speed is a smooth and slow function of speed. So where solutions differ in
 * nothing but a throttle common to all pumps, the next is looked for on the curve (a line, a parabola, a cubic) through the
 * last of them.
 */
export class WarmStart {
  private readonly equations: Equations;
  /** Slots of the solutions kept, the latest first; and by slot the speed of all pumps together. */
  private readonly slots: number[] = [];
  private readonly speed: number[] = new Array<number>(PAST).fill(0);
  /** By pump: its part of the speed in all that is kept. */
  private readonly part: number[] = [];
  /** By pump: its speed in the solution that the equations hold. */
  private readonly last: number[] = [];

  constructor(equations: Equations) {
    this.equations = equations;
  }

  /** Forgets what is kept, as something but a speed has changed. */
  forget(): void {
    this.slots.length = 0;
  }

  /** Says that the equations hold a solution at the speeds that are set. */
  solved(): void {
    const { pumps, laws } = this.equations.losses;
    for (let p = 0; p < pumps.length; p++) this.last[p] = laws.speed[pumps[p]];
  }

  /** Moves the flows from the last solution to a guess at the speeds that are set now, and linearises every law there. */
  begin(): void {
    const { last } = this;
    const { pumps, laws } = this.equations.losses;
    let before = 0;
    let now = 0;
    for (let p = 0; p < pumps.length; p++) {
      before += last[p];
      now += laws.speed[pumps[p]];
    }
    if (before === 0) {
      this.equations.linearise();
      return;
    }
    let alike = true;
    for (let p = 0; p < pumps.length; p++) {
      const part = last[p] / before;
      if (Math.abs(laws.speed[pumps[p]] / now - part) > SAME_SPEED) alike = false;
      if (Math.abs(this.part[p] - part) <= SAME_SPEED) continue;
      this.part[p] = part;
      this.forget();
    }
    const slot = this.slotFor(before);
    this.weigh(now, alike ? this.slots.length : 1);
    this.equations.workspace.guess(slot);
    this.equations.lineariseOthers();
  }

  /** The slot for a solution at a speed: that of one at the same speed, a free one, or that of the oldest. */
  private slotFor(speed: number): number {
    const { slots } = this;
    let place = 0;
    while (place < slots.length && Math.abs(this.speed[slots[place]] - speed) > SAME_SPEED * speed) place++;
    if (place === slots.length && place < PAST) slots.push(place);
    place = Math.min(place, PAST - 1);
    const slot = slots[place];
    for (; place > 0; place--) slots[place] = slots[place - 1];
    slots[0] = slot;
    this.speed[slot] = speed;
    return slot;
  }

  /** Weighs the latest solutions for a speed, at most so many of them. */
  private weigh(at: number, most: number): void {
    const { slots, speed } = this;
    const { weight } = this.equations.workspace;
    for (let by = most; by > 0; by--) {
      for (let k = 0; k < PAST; k++) weight[k] = 0;
      let sum = 0;
      // Lagrange's weights for flow over speed.
      for (let j = 0; j < by; j++) {
        const own = speed[slots[j]];
        let part = at / own;
        for (let k = 0; k < by; k++) if (k !== j) part *= (at - speed[slots[k]]) / (own - speed[slots[k]]);
        weight[slots[j]] = part;
        sum += Math.abs(part);
      }
      if (sum <= MOST_WEIGHT) return;
    }
  }
}
