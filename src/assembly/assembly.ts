import type { Nozzle } from '../catalogue/schema/nozzle.js';
import type { Pump } from '../catalogue/schema/pump.js';
import type { Staging } from '../layout/layout.js';
import type { NozzleStep, OpenEndStep, Path } from '../layout/step.js';
import type { Network } from '../network/network.js';
import type { PumpCurve } from '../physics/pump-curve/curve.js';
import type { HeldSpeed } from '../physics/pump-curve/held-speed.js';
import type { TankReturn } from './line.js';
import type { Element, Place } from './network-builder.js';
import type { PumpLaw } from './pump-law.js';
import type { Site } from './site.js';

export type StagingName = Staging;

/** A pump as the network has it. */
export interface AssembledPump {
  /** `a`, `b`, or the name of a booster. */
  name: string;
  model: Pump;
  /** The model's name. */
  modelName: string;
  curve: PumpCurve;
  /** Fraction of the speed of the curve that its governor is set to. */
  speed: number;
  /** What its engine lets it hold; undefined where the file has not both engine power and efficiency. */
  held?: HeldSpeed;
  /** What the network has of it. */
  law: PumpLaw;
  link: number;
  inlet: Place;
  discharge: Place;
  /** Its own check valve, where its discharge has one. */
  checkValve?: Element;
  /** The link of its own relief valve, where each pump has one. */
  relief?: number;
  /** The link of its own cooling line, where one leaves between it and its check valve. */
  cooling?: number;
  booster: boolean;
  path: Path;
}

export interface AssembledNozzle {
  name: string;
  model: Nozzle | { kind: 'open_end' };
  modelName: string;
  state: 'open' | 'shut';
  /** The link to the air; undefined where it is shut. */
  link?: number;
  inlet: Place;
  path: Path;
  /** What the document says of it. */
  step: NozzleStep | OpenEndStep;
}

/** A named point where a gauge may be read. */
export interface NamedPlace {
  name: string;
  place: Place;
  /** Highest pressure on the dial of a gauge that says so, Pa. */
  range?: number;
}

/** A layout made into a network, with what the parts of the network are called. */
export interface Assembly {
  staging: StagingName;
  network: Network;
  site: Site;
  elements: Element[];
  pumps: AssembledPump[];
  nozzles: AssembledNozzle[];
  gauges: NamedPlace[];
  reliefs: TankReturn[];
  /** Cooling lines that are no pump's own, as they leave behind its check valve or where the discharges meet. */
  coolers: TankReturn[];
  /** Where the engine's plumbing ends, by name. */
  outlets: NamedPlace[];
  /** Where a requirement is judged: the outlets, or the end of a lay that was laid without its nozzle. */
  ends: NamedPlace[];
  /** Where the suctions part. */
  intake: Place;
  /** The surface that the engine draws from. */
  source: Place;
  /** The link of an outlet that was hung on an end beside what the layout has. */
  hung?: number;
}
