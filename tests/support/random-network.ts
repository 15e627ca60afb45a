import type { Network } from '../../src/network/network.js';
import type { EpanetHint } from './epanet.js';
import { NetworkBuilder } from './network-builder.js';
import { CubicPumpCurve, PowerPumpCurve, type TestPumpCurve } from './pump-curves.js';
import type { Random } from './random.js';
import { FOOT, GPM, HEAD_PER_PSI, INCH } from './units.js';

export const STAGINGS = ['parallel', 'series', 'alone', 'separate'] as const;
export type Staging = (typeof STAGINGS)[number];

export interface RandomNetwork {
  network: Network;
  hints: ReadonlyMap<number, EpanetHint>;
  staging: Staging;
  /** Link indices. */
  pumps: number[];
  checks: number[];
  nozzles: number[];
  hoses: number[];
}

export interface RandomOptions {
  staging?: Staging;
  /** Pump b makes so little that a shuts it out, unless the lays take nearly all that a has. */
  weakB?: boolean;
}

/** Bores of hose, in, with the coefficients C of pump-operator texts (from memory: IFSTA). */
const HOSES = [
  { inches: 1, coefficient: 150 },
  { inches: 1.5, coefficient: 24 },
  { inches: 1.75, coefficient: 15.5 },
  { inches: 2.5, coefficient: 2 },
] as const;

/**
 * An engine with two unlike pumps and lays of hose from it, about `size` links: trunks with laterals, branches in branches,
 * siamese pairs, boosters, nozzles open and shut, capped ends, cross ties and draws, on rough ground.
 */
export function randomNetwork(random: Random, size: number, options: RandomOptions = {}): RandomNetwork {
  return new Drawing(random, size, options.staging ?? random.pick(STAGINGS), options.weakB ?? false).draw();
}

class Drawing {
  readonly #builder = new NetworkBuilder();
  readonly #pumps: number[] = [];
  readonly #checks: number[] = [];
  readonly #nozzles: number[] = [];
  readonly #hoses: number[] = [];
  /** Ends of hose that a cross tie may join. */
  readonly #couplings: number[] = [];

  constructor(
    private readonly random: Random,
    private readonly size: number,
    private readonly staging: Staging,
    private readonly weakB: boolean,
  ) {}

  draw(): RandomNetwork {
    const { random } = this;
    const outlets = this.#engine();
    for (const [index, outlet] of outlets.entries()) {
      const left = this.size - this.#builder.links.length;
      this.#lay(outlet, Math.max(2, Math.floor(left / (outlets.length - index))), 0);
    }
    if (this.#nozzles.length === 0) this.#endInNozzle(outlets[0]);
    if (random.chance(0.25) && this.#couplings.length > 3) {
      for (let tie = random.integer(1, 3); tie > 0; tie -= 1) {
        const from = random.pick(this.#couplings);
        const to = random.pick(this.#couplings);
        if (from !== to) this.#hose(from, to);
      }
    }
    if (random.chance(0.2) && this.#couplings.length > 0) {
      for (let draw = random.integer(1, 3); draw > 0; draw -= 1) {
        this.#builder.nodes[random.pick(this.#couplings)].demand = random.between(0, 8) * GPM;
      }
    }
    return {
      network: this.#builder.network,
      hints: this.#builder.hints,
      staging: this.staging,
      pumps: this.#pumps,
      checks: this.#checks,
      nozzles: this.#nozzles,
      hoses: this.#hoses,
    };
  }

  /** Tank, pumps and plumbing; gives the nodes that lays hang on. */
  #engine(): number[] {
    const { random } = this;
    const hydrant = random.chance(0.15);
    const water = hydrant ? random.between(20, 70) * HEAD_PER_PSI : random.between(1, 6) * FOOT;
    const tank = this.#builder.fixed('tank', water);
    const intake = this.#builder.node('intake');
    this.#plumbing('intake plumbing', tank, intake);
    const a = this.#pump('a', this.#suction('a', intake));
    let manifolds: number[];
    if (this.staging === 'series') {
      const between = this.#builder.node('b inlet');
      this.#plumbing('transfer', a, between);
      const manifold = this.#discharge('b', this.#pump('b', between));
      // A change-over often leaves a check valve past the second pump.
      if (random.chance(0.3)) this.#check('bypass of b', a, manifold);
      manifolds = [manifold];
    } else {
      const manifold = this.#discharge('a', a);
      manifolds = [manifold];
      const b = this.#pump('b', this.#suction('b', intake));
      if (this.staging === 'parallel') this.#check('b check', b, manifold);
      // Pump b of an engine that pumps with a alone turns against its shut discharge valve.
      if (this.staging === 'separate') manifolds.push(this.#discharge('b', b));
    }
    if (random.chance(0.5)) {
      const orifice = HEAD_PER_PSI / (29.7 * (random.pick([1, 2, 3]) / 16) ** 2 * GPM) ** 2;
      this.#builder.resistance('cooling line', manifolds[0], tank, orifice, { bore: INCH / 4 });
    }
    const extra = this.weakB ? 0 : random.integer(0, 2);
    for (let outlet = 0; outlet < extra; outlet += 1) manifolds.push(random.pick(manifolds));
    return manifolds.map((manifold, index) => {
      const outlet = this.#builder.node(`outlet ${index + 1}`);
      this.#plumbing(`outlet plumbing ${index + 1}`, manifold, outlet);
      return outlet;
    });
  }

  #suction(pump: string, intake: number): number {
    const inlet = this.#builder.node(`${pump} inlet`);
    this.#plumbing(`${pump} suction`, intake, inlet);
    return inlet;
  }

  #pump(name: string, inlet: number): number {
    const outlet = this.#builder.node(`${name} volute`);
    const options = { oneWay: this.random.chance(0.2) };
    const weak = this.weakB && name === 'b';
    const speed = this.random.between(this.weakB ? 0.9 : 0.55, 1);
    const shutoff = weak ? this.random.between(40, 80) : this.random.between(this.weakB ? 350 : 120, 450);
    const curve = this.#curve(shutoff * HEAD_PER_PSI);
    this.#pumps.push(this.#builder.pump(`pump ${name}`, inlet, outlet, curve, speed, options));
    return outlet;
  }

  /** Runout of 60 to 500 gpm. */
  #curve(shutoff: number): TestPumpCurve {
    const { random } = this;
    const runOut = random.logBetween(60, 500) * GPM;
    if (random.chance(0.25)) {
      const share = random.between(0.2, 0.5);
      return new CubicPumpCurve(shutoff, (share * shutoff) / runOut, ((1 - share) * shutoff) / runOut ** 3);
    }
    const exponent = random.between(1.4, 3);
    return new PowerPumpCurve(shutoff, shutoff / runOut ** exponent, exponent);
  }

  #discharge(name: string, from: number): number {
    const manifold = this.#builder.node(`${name} manifold`);
    this.#check(`${name} check`, from, manifold);
    return manifold;
  }

  #check(name: string, from: number, to: number): void {
    const lossAtHundred = this.random.between(1, 8) * HEAD_PER_PSI;
    const index = this.#builder.resistance(name, from, to, lossAtHundred / (100 * GPM) ** 2, {
      oneWay: true,
      bore: 2 * INCH,
    });
    this.#checks.push(index);
  }

  /** Rigid plumbing of 1 to 6 ft with its fittings. */
  #plumbing(name: string, from: number, to: number): void {
    const { random } = this;
    const pipe = {
      c: 140,
      feet: random.between(1, 6),
      inches: random.pick([2, 2.5, 3]),
      k: random.between(0.2, 6),
    };
    this.#builder.hazenWilliams(name, from, to, pipe);
  }

  #hose(from: number, to: number): void {
    const { random } = this;
    const { inches, coefficient } = random.pick(HOSES);
    const name = `hose ${this.#builder.links.length}`;
    const feet = random.pick([50, 100, 100, 200]);
    const options = { bore: inches * INCH, oneWay: random.chance(0.03) };
    if (random.chance(0.3)) {
      this.#hoses.push(this.#builder.hazenWilliams(name, from, to, { c: 135, feet, inches }, options));
    } else this.#hoses.push(this.#builder.hose(name, from, to, coefficient, feet, options));
  }

  #coupling(near: number, rise: number): number {
    const { nodes } = this.#builder;
    const node = this.#builder.node(`point ${nodes.length}`, nodes[near].elevation + rise);
    this.#couplings.push(node);
    return node;
  }

  #lay(start: number, budget: number, depth: number): void {
    const { random } = this;
    const until = this.#builder.links.length + budget;
    let at = start;
    while (this.#builder.links.length < until) {
      const next = this.#coupling(at, random.between(-20, 25) * FOOT);
      const left = until - this.#builder.links.length;
      const kind = random.next();
      if (kind < 0.08 && left > 4) this.#siamese(at, next);
      else if (kind < 0.1 && depth < 2 && left > 4) this.#booster(at, next);
      else if (kind < 0.14) this.#check(`check ${this.#builder.links.length}`, at, next);
      else this.#hose(at, next);
      if (depth < 4 && left > 4 && random.chance(0.45)) {
        this.#lay(next, random.integer(2, Math.max(2, Math.floor(left / 2))), depth + 1);
      }
      at = next;
    }
    // Of ten lines six flow, two run free and two are shut or capped.
    const end = random.next();
    if (end < 0.6) this.#endInNozzle(at);
    else if (end < 0.8) this.#endInNozzle(at, 1);
  }

  #endInNozzle(at: number, tip: number = this.random.pick([3, 4, 5, 6, 8]) / 16): void {
    const options = { oneWay: this.random.chance(0.5), bore: tip * INCH };
    this.#nozzles.push(this.#builder.nozzle(`nozzle ${this.#nozzles.length + 1}`, at, tip, options));
  }

  /** Unlike lines that part and meet again, one of them in two lengths. */
  #siamese(from: number, to: number): void {
    const middle = this.#coupling(from, 0);
    this.#hose(from, to);
    this.#hose(from, middle);
    this.#hose(middle, to);
  }

  #booster(from: number, to: number): void {
    const outlet = this.#pump(`booster ${this.#pumps.length - 1}`, from);
    this.#check(`check of booster ${this.#pumps.length - 2}`, outlet, to);
  }
}
