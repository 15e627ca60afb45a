import type { AssembledNozzle, AssembledPump, StagingName } from '../../src/assembly/assembly.js';
import type { OperatingPoint } from '../../src/assembly/operating-point.js';
import { loadCatalogue } from '../../src/catalogue/load.js';
import type { Layout } from '../../src/layout/layout.js';
import { readLayoutText } from '../../src/layout/read-layout.js';
import { Rig, SolvedAssembly } from '../../src/study/rig.js';
import { FOOT, GPM, GRAVITY, INCH, PSI } from './units.js';

/** A document as it would be written; JSON is YAML. */
export type Document = Record<string, unknown>;
export type StepText = Record<string, unknown>;

export const catalogue = loadCatalogue();

export function layoutFrom(document: Document): Layout {
  return readLayoutText(JSON.stringify(document), 'layout.yaml', { catalogue }).layout;
}

/**
 * A pump whose pressure falls from shutoff with the square of its flow, so that what it makes can be worked out by hand:
 * P = shutoff - (shutoff - pressure) (Q / flow)^2, known out to `last`.
 */
export function parabolic(
  shutoff: number,
  flow: number,
  pressure: number,
  last = flow * Math.sqrt(shutoff / (shutoff - pressure)) * 0.999,
  more: Document = {},
): Document {
  const fall = (shutoff - pressure) / flow ** 2;
  const point = (q: number) => [`${q} gpm`, `${shutoff - fall * q * q} psi`];
  return { name: 'parabola', shape: 'power', points: [point(0), point(last / 2), point(last)], ...more };
}

/** What `parabolic` makes, psi at gpm. */
export function parabola(shutoff: number, flow: number, pressure: number, q: number): number {
  return shutoff - (shutoff - pressure) * (q / flow) ** 2;
}

/** An engine of two pumps with nothing between them and the outlet, and its water level with them. */
export function engineOf(a: unknown, b?: unknown, more: Document = {}): Document {
  return {
    name: 'Engine of the tests',
    tank: { capacity: '500 gal' },
    pumps: { a: { model: a }, ...(b === undefined ? {} : { b: { model: b } }) },
    ...more,
  };
}

/** A check valve without loss, for closed forms. */
export const FREE_CHECK: StepText = { check_valve: { loss: '0 psi' } };

export interface Solved {
  point: OperatingPoint;
  pump: (name: string) => AssembledPump;
  nozzle: (name: string) => AssembledNozzle;
  /** gpm of a pump, a nozzle or any link, by name. */
  gpm: (name: string) => number;
  /** psi that a named gauge reads. */
  gauge: (name: string) => number;
  /** psi lost in a part, by name, its rise left out. */
  loss: (name: string) => number;
}

/** Solves a layout as it stands, in a staging of its own or another. */
export async function solve(document: Document, staging?: StagingName): Promise<Solved> {
  const layout = layoutFrom(document);
  const rig = await Rig.of(layout);
  const assembly = rig.assemble({ staging: staging ?? layout.staging, lay: 'whole' });
  const point = new SolvedAssembly(assembly).solve();
  const found = <T extends { name: string }>(list: readonly T[], name: string, what: string): T => {
    const one = list.find((item) => item.name === name);
    if (!one) throw new Error(`no ${what} ${name} among ${list.map((item) => item.name).join(', ')}`);
    return one;
  };
  const linkOf = (name: string) => {
    const link = assembly.network.links.findIndex((one) => one.name === name);
    if (link < 0)
      throw new Error(`no link ${name} among ${assembly.network.links.map((one) => one.name).join(', ')}`);
    return link;
  };
  return {
    point,
    pump: (name) => found(assembly.pumps, name, 'pump'),
    nozzle: (name) => found(assembly.nozzles, name, 'nozzle'),
    gpm: (name) => point.flow(linkOf(name)) / GPM,
    gauge: (name) => point.gaugePressure(found(assembly.gauges, name, 'gauge').place) / PSI,
    loss: (name) => point.lossOf(found(assembly.elements, name, 'part')) / PSI,
  };
}

/** Every name and number of a network, to compare two layouts that ought to be the same. */
export async function networkOf(document: Document, staging?: StagingName) {
  const layout = layoutFrom(document);
  const rig = await Rig.of(layout);
  return rig.assemble({ staging: staging ?? layout.staging, lay: 'whole' }).network;
}

/** Density of water at 60 degF as the trade's constants have it (62.4 lb/ft3 rounds it), kg/m3: from memory, 999.0. */
export const DENSITY = 998.97;

/** Velocity head in a bore, psi, of a flow in gpm: rho v^2 / 2. */
export function velocityPressure(gpm: number, inches: number, density = DENSITY): number {
  const area = (Math.PI * (inches * INCH) ** 2) / 4;
  return (0.5 * density * ((gpm * GPM) / area) ** 2) / PSI;
}

/** Pressure of a column of water, psi, by feet. */
export function columnPressure(feet: number, density = DENSITY): number {
  return (density * GRAVITY * feet * FOOT) / PSI;
}

/** psi lost in hose by its coefficient: C (gpm/100)^2 (ft/100). */
export function coefficientLoss(coefficient: number, gpm: number, feet: number): number {
  return (coefficient * (gpm / 100) ** 2 * feet) / 100;
}

/** gpm of a smooth bore or sharp orifice: 29.84 Cd d^2 sqrt(P); the constant is that of ideal flow. */
export function orificeFlow(inches: number, psi: number, coefficient = 1): number {
  const area = (Math.PI * (inches * INCH) ** 2) / 4;
  return (coefficient * area * Math.sqrt((2 * psi * PSI) / DENSITY)) / GPM;
}

/** psi behind an orifice that passes a flow, by its Cd. */
export function orificePressure(inches: number, gpm: number, coefficient = 1): number {
  return velocityPressure(gpm / coefficient, inches);
}
