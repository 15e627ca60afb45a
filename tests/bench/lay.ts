import { NetworkBuilder } from '../support/network-builder.js';
import { PowerPumpCurve } from '../support/pump-curves.js';
import { Random } from '../support/random.js';
import { FOOT, GPM, HEAD_PER_PSI, INCH } from '../support/units.js';

export interface BenchLay {
  builder: NetworkBuilder;
  /** Link indices of the pumps. */
  pumps: [number, number];
}

/** Links of the engine: intake, two suctions, pumps, check valves and discharge valves, and the outlet. */
const ENGINE_LINKS = 10;
const LINKS_PER_SECTION = 3;

export function sectionsFor(links: number): number {
  return (links - ENGINE_LINKS) / LINKS_PER_SECTION;
}

/** Two unlike pumps side by side, each behind its check valve; gives the node where the lay begins. */
function engine(builder: NetworkBuilder): { pumps: [number, number]; outlet: number } {
  const tank = builder.fixed('tank', 3 * FOOT);
  const intake = builder.node('intake');
  builder.hazenWilliams('intake', tank, intake, { c: 140, feet: 4, inches: 4, k: 2 });
  const manifold = builder.node('manifold');
  const pump = (name: string, shutoffPsi: number, runOutGpm: number) => {
    const inlet = builder.node(`${name} inlet`);
    const volute = builder.node(`${name} volute`);
    const beyond = builder.node(`beyond ${name} check`);
    builder.hazenWilliams(`${name} suction`, intake, inlet, { c: 140, feet: 3, inches: 3, k: 1.5 });
    const shutoff = shutoffPsi * HEAD_PER_PSI;
    const curve = new PowerPumpCurve(shutoff, shutoff / (runOutGpm * GPM) ** 2, 2);
    const index = builder.pump(`pump ${name}`, inlet, volute, curve);
    builder.hose(`${name} check`, volute, beyond, 2, 50, { oneWay: true, bore: 2.5 * INCH });
    builder.hose(`${name} discharge`, beyond, manifold, 2, 25, { bore: 2.5 * INCH });
    return index;
  };
  const pumps: [number, number] = [pump('a', 320, 380), pump('b', 290, 330)];
  const outlet = builder.node('outlet');
  builder.hose('outlet', manifold, outlet, 2, 10, { bore: 2.5 * INCH });
  return { pumps, outlet };
}

/**
 * One lay cut into as many sections as asked for: about 250 gpm in all and 70 psi along the trunk whatever their number,
 * each section with a lateral and a nozzle, over two hills of 60 ft. Every nozzle flows outward.
 */
export function sharedLay(links: number): BenchLay {
  const builder = new NetworkBuilder();
  const { pumps, outlet } = engine(builder);
  const sections = sectionsFor(links);
  const total = 250;
  const each = total / sections;
  // Draws spread evenly along a line lose a third of what the whole flow would at its end (common practice, no source).
  const trunkPsi = (3 * 70) / sections / total ** 2;
  const random = new Random(7);
  let at = outlet;
  for (let section = 1; section <= sections; section += 1) {
    const height = 60 * Math.sin((2 * Math.PI * section) / sections) ** 2 * FOOT;
    const point = builder.node(`wye ${section}`, height);
    const tip = builder.node(`tip ${section}`, height + random.between(-10, 10) * FOOT);
    builder.resistance(`trunk ${section}`, at, point, (trunkPsi * HEAD_PER_PSI) / GPM ** 2);
    builder.resistance(`lateral ${section}`, point, tip, ((15 / each ** 2) * HEAD_PER_PSI) / GPM ** 2, {
      bore: INCH,
    });
    // The tip that passes its share at 100 psi: gpm = 29.7 d^2 sqrt(psi).
    builder.nozzle(`nozzle ${section}`, tip, Math.sqrt(each / 297));
    at = point;
  }
  return { builder, pumps };
}

/**
 * A lay of the same 100 ft sections of 1-1/2 in hose throughout with a 3/16 in tip at each, falling 3 ft a section: the first
 * dozens take nearly all the water and the far end trickles, which is hard on a start that knows nothing of the lay.
 */
export function trickleLay(links: number): BenchLay {
  const builder = new NetworkBuilder();
  const { pumps, outlet } = engine(builder);
  const random = new Random(11);
  let at = outlet;
  for (let section = 1; section <= sectionsFor(links); section += 1) {
    const height = -3 * section * FOOT;
    const point = builder.node(`wye ${section}`, height);
    const tip = builder.node(`tip ${section}`, height - random.between(0, 2) * FOOT);
    builder.hose(`trunk ${section}`, at, point, 24, 100);
    builder.hose(`lateral ${section}`, point, tip, 150, 100, { bore: INCH });
    builder.nozzle(`nozzle ${section}`, tip, 3 / 16);
    at = point;
  }
  return { builder, pumps };
}
