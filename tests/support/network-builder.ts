import type { LinkLaw, Network, NetworkLink, NetworkNode } from '../../src/network/network.js';
import type { EpanetHint } from './epanet.js';
import type { TestPumpCurve } from './pump-curves.js';
import { CUBIC_FOOT, FOOT, GPM, HEAD_PER_PSI, INCH } from './units.js';

export interface LinkOptions {
  oneWay?: boolean;
  /** Inside diameter, m; the loss does not depend on it, the other engine's first guess does. */
  bore?: number;
}

/** Below this flow the laws of the tests turn linear, as laminar flow does: 0.016 gpm. */
export const LINEAR_BELOW = 1e-6;

/** Builds a network by the trade's own figures, together with what EPANET must know to solve the same one. */
export class NetworkBuilder {
  readonly nodes: NetworkNode[] = [];
  readonly links: NetworkLink[] = [];
  readonly hints = new Map<number, EpanetHint>();

  get network(): Network {
    return { nodes: this.nodes, links: this.links };
  }

  /** A junction at a height, m. */
  node(name: string, elevation = 0): number {
    return this.nodes.push({ name, elevation }) - 1;
  }

  /** A water surface or the open air, m. */
  fixed(name: string, head: number, elevation = head): number {
    return this.nodes.push({ name, elevation, head }) - 1;
  }

  link(name: string, from: number, to: number, law: LinkLaw, options: LinkOptions = {}): number {
    const link: NetworkLink = { name, from, to, law };
    if (options.oneWay) link.oneWay = true;
    const index = this.links.push(link) - 1;
    this.hints.set(index, { bore: options.bore ?? 1.5 * INCH });
    return index;
  }

  /** loss = resistance q|q|, m and m3/s. */
  resistance(name: string, from: number, to: number, resistance: number, options: LinkOptions = {}): number {
    return this.link(name, from, to, { kind: 'resistance', resistance, linearBelow: LINEAR_BELOW }, options);
  }

  /** Fire hose: psi = C (gpm/100)^2 (ft/100), as printed in pump-operator texts (C 24 for 1-1/2 in, 150 for 1 in). */
  hose(
    name: string,
    from: number,
    to: number,
    coefficient: number,
    feet: number,
    options: LinkOptions = {},
  ): number {
    const psiAtHundredGpm = (coefficient * feet) / 100;
    return this.resistance(name, from, to, (psiAtHundredGpm * HEAD_PER_PSI) / (100 * GPM) ** 2, options);
  }

  /** Hazen-Williams pipe in EPANET's form, h = 4.727 L Q^1.852 / (C^1.852 d^4.871), ft and cfs, with a fitting coefficient K. */
  hazenWilliams(
    name: string,
    from: number,
    to: number,
    pipe: { c: number; feet: number; inches: number; k?: number },
    options: LinkOptions = {},
  ): number {
    const diameter = pipe.inches / 12;
    const friction = (4.727 * pipe.feet) / (pipe.c ** 1.852 * diameter ** 4.871);
    const minor = (0.02517 * (pipe.k ?? 0)) / diameter ** 4;
    const law: LinkLaw = {
      kind: 'power',
      resistance: (friction * FOOT) / CUBIC_FOOT ** 1.852,
      exponent: 1.852,
      minor: (minor * FOOT) / CUBIC_FOOT ** 2,
      linearBelow: LINEAR_BELOW,
    };
    return this.link(name, from, to, law, { bore: pipe.inches * INCH, ...options });
  }

  /** A smooth-bore tip into the open air: gpm = 29.7 d^2 sqrt(psi), d in inches. */
  nozzle(name: string, from: number, tipInches: number, options: LinkOptions = {}): number {
    const air = this.fixed(`air at ${name}`, this.nodes[from].elevation);
    const resistance = HEAD_PER_PSI / (29.7 * tipInches ** 2 * GPM) ** 2;
    return this.resistance(name, from, air, resistance, { bore: tipInches * INCH, ...options });
  }

  pump(
    name: string,
    from: number,
    to: number,
    curve: TestPumpCurve,
    speed = 1,
    options: LinkOptions = {},
  ): number {
    const index = this.link(name, from, to, { kind: 'curve', curve, speed }, options);
    this.hints.set(index, { sampleFlows: curve.sampleFlows() });
    return index;
  }
}
