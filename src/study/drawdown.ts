import type { OperatingPoint } from '../assembly/operating-point.js';
import { STANDSTILL } from '../assembly/standstill.js';
import type { Layout } from '../layout/layout.js';
import type { SolvedAssembly } from './rig.js';
import { drawnFrom } from './supply.js';

/**
 * The engine's tank as it runs down: its surface falls evenly from full to empty, and the flow with it. Without a depth
 * of its own the surface falls to the height of the pump inlets, or not at all where it is stated at or below them.
 */
export class DrawDown {
  private readonly tank: NonNullable<Layout['engine']['tank']>;
  private readonly solved: SolvedAssembly;

  constructor(tank: NonNullable<Layout['engine']['tank']>, solved: SolvedAssembly) {
    this.tank = tank;
    this.solved = solved;
  }

  /** Height of the surface over the pump inlets with a volume left, m. */
  surface(volume: number): number {
    const { capacity, outlet_height, depth = Math.max(0, outlet_height) } = this.tank;
    return outlet_height - depth * (1 - volume / capacity);
  }

  /** The steady state with a volume left. */
  at(volume: number): OperatingPoint {
    this.solved.setHead(this.solved.assembly.source.node, this.surface(volume));
    return this.solved.solve();
  }

  /** What leaves the tank with a volume left, m3/s; what comes back to it is taken off. */
  flowAt(volume: number): number {
    return drawnFrom(this.at(volume), this.solved.assembly.source.node);
  }

  /**
   * Time until the tank is drawn from one volume to another, s: the integral of dV / (Q(V) - inflow) by Simpson's rule.
   * Null where it does not run down: nothing is drawn, or what comes in keeps up.
   */
  time(from: number, to: number, inflow = 0, pieces = 4): number | null {
    const parts = 2 * pieces;
    let sum = 0;
    for (let i = 0; i <= parts; i++) {
      const net = this.flowAt(to + ((from - to) * i) / parts) - inflow;
      if (net < STANDSTILL) return null;
      sum += (i === 0 || i === parts ? 1 : i % 2 === 1 ? 4 : 2) / net;
    }
    return (sum * (from - to)) / (3 * parts);
  }

  /** Puts the surface back to where a full tank has it, for whoever solves next. */
  refill(): void {
    const { capacity } = this.tank;
    this.solved.setHead(this.solved.assembly.source.node, this.surface(capacity));
  }
}
