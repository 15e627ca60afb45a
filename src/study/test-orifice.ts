import type { Assembly, NamedPlace } from '../assembly/assembly.js';
import type { OperatingPoint } from '../assembly/operating-point.js';
import { nozzleLaw } from '../assembly/outlet.js';
import { citation } from '../catalogue/citation.js';
import type { Nozzle } from '../catalogue/schema/nozzle.js';
import type { TypingTestOrifice } from '../catalogue/schema/typing.js';
import { pressureOfHeight } from '../physics/elevation.js';
import { velocityHead } from '../physics/velocity.js';
import type { TestOrifice } from './answer.js';
import { SolvedAssembly } from './rig.js';

/** What the inspector reads, and the state that he reads it in. */
export interface OrificeReading {
  answer: TestOrifice;
  state: OperatingPoint;
}

/**
 * Hangs the agency's test orifice on an end and predicts what the inspector reads there: the gauge in the tee upstream of
 * it, which reads static pressure.
 */
export function readTestOrifice(
  assembly: Assembly,
  end: NamedPlace,
  orifice: TypingTestOrifice,
): OrificeReading {
  const { bore, tee_bore, discharge_coefficient, passes, grades } = orifice;
  const nozzle: Nozzle = {
    kind: orifice.kind,
    bore,
    discharge_coefficient,
    ...(orifice.kind === 'sharp_orifice' && { tee_bore }),
  };
  const { network, site } = assembly;
  const nodes = [...network.nodes];
  const { elevation } = end.place;
  const air = nodes.push({ name: 'air at the test orifice', elevation, head: elevation }) - 1;
  const link = network.links.length;
  const law = nozzleLaw(nozzle, site);
  const links = [
    ...network.links,
    { name: 'test orifice', from: end.place.node, to: air, law, oneWay: true },
  ];
  const state = new SolvedAssembly({ ...assembly, network: { nodes, links } }).solve();
  const flow = state.flow(link);
  const velocity = tee_bore === undefined ? 0 : velocityHead(flow, tee_bore);
  const reading = state.totalPressure(end.place) - pressureOfHeight(velocity, site.waterDensity);
  const answer = {
    bore,
    dischargeCoefficient: discharge_coefficient,
    reading,
    flow,
    margin: reading - passes,
    grades: grades ?? [{ grade: 'pass', from: passes }],
    grade: grades?.find(({ from }) => reading >= from)?.grade ?? (reading >= passes ? 'pass' : 'below'),
    source: citation(orifice),
  };
  return { answer, state };
}
