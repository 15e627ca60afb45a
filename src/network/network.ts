/**
 * A steady-flow network of nodes and links: heads in metres of the water that flows, flows in cubic metres a second.
 * Nothing here knows what a hose or a pump is; a link is a law of head loss against flow.
 */
export interface NetworkNode {
  name: string;
  /** Height of the point, m; only used to tell pressure from head and to guess a start. */
  elevation: number;
  /** A fixed total head, m: a water surface, or the open air at the end of a nozzle. */
  head?: number;
  /** Water drawn off here, m3/s; negative where it is fed in. */
  demand?: number;
}

/** Head loss along a link and its slope at a flow; `slope` is never negative for a law the solver can promise to solve. */
export interface LossCurve {
  /** Writes the loss (m) at a flow (m3/s) and d(loss)/d(flow) into `out`. */
  evaluate(flow: number, out: LossAtFlow): void;
}

export interface LossAtFlow {
  loss: number;
  slope: number;
}

/**
 * What holds a pump below the speed that is set, as an engine does that runs out of power: the speed held at a flow, and
 * how it changes with it. It must leave the pump's head falling as flow grows.
 */
export interface SpeedLimit {
  /** Writes the speed at a flow (m3/s) where `set` is asked for, and d(speed)/d(flow). */
  evaluate(flow: number, set: number, out: SpeedAtFlow): void;
}

export interface SpeedAtFlow {
  speed: number;
  slope: number;
}

export type LinkLaw =
  /** loss = resistance q|q|, linear below `linearBelow` (m3/s) as in laminar flow, so that the slope never vanishes. */
  | { kind: 'resistance'; resistance: number; linearBelow: number }
  /** loss = resistance q|q|^(exponent-1) + minor q|q|. */
  | { kind: 'power'; resistance: number; exponent: number; minor: number; linearBelow: number }
  /** Any other monotone law. With `speed` it is a pump's: loss = s^2 curve(q / s), by the affinity laws. */
  | { kind: 'curve'; curve: LossCurve; speed?: number; limit?: SpeedLimit };

export interface NetworkLink {
  name: string;
  /** Index of the node that positive flow leaves. */
  from: number;
  to: number;
  law: LinkLaw;
  /**
   * Lets water pass from `from` to `to` only, as a check valve does. What its law loses at no flow must be overcome before
   * it opens: nothing for a check valve, the spring of a relief valve, less than nothing for a pump.
   */
  oneWay?: boolean;
  /** Part of a valve that is shut: what is refused by it is to be told by its name. */
  shut?: boolean;
}

export interface Network {
  nodes: NetworkNode[];
  links: NetworkLink[];
}

export interface SolveOptions {
  /** Largest imbalance of a node, m3/s. */
  flowTolerance?: number;
  /** Largest energy residual of a link, m. */
  headTolerance?: number;
  maximumIterations?: number;
  /** Start from the last solutions of this solver where there are any. */
  warm?: boolean;
}

export interface Solution {
  status: 'solved' | 'failed';
  /** m3/s by link, positive from `from` to `to`. */
  flows: readonly number[];
  /** Total head by node, m. */
  heads: readonly number[];
  iterations: number;
  flowResidual: number;
  headResidual: number;
  /** Where the worst residual stands: a link's index, or -1. */
  worstLink: number;
  worstNode: number;
  failure?: NetworkFailure;
}

export interface NetworkFailure {
  code: 'no_source' | 'cut_off_demand' | 'not_converged' | 'bad_number';
  /** Names of the nodes or links that cause it. */
  where: string[];
  message: string;
  /** What the reader can do. */
  action: string;
}
