import { expect, test } from 'vitest';
import { siteOf } from '../../src/assembly/site.js';
import { operateLayout } from '../../src/study/operation.js';
import { solveByEpanet } from '../support/epanet.js';
import { NetworkBuilder } from '../support/network-builder.js';
import { PowerPumpCurve } from '../support/pump-curves.js';
import { Random } from '../support/random.js';
import { engine, FOOT, GPM, lay, layoutOf, PSI, type Section } from './support.js';

/** Figures of the site that the tests' layouts have by default: water at 60 degF. */
const { waterDensity } = siteOf({
  elevation: 0,
  air_temperature: 288.15,
  water_temperature: 288.7056,
  derating: 'agricultural',
});
const HEAD_PER_PSI = PSI / (waterDensity * 9.80665);

function randomSections(random: Random, count: number): Section[] {
  return Array.from({ length: count }, () => {
    const feet = random.pick([50, 100, 200]);
    return {
      feet,
      rise: Math.round(random.between(-0.12, 0.2) * feet),
      lateral: { feet: random.pick([50, 100]), gpm: random.pick([3, 6, 10]), psi: random.pick([50, 100]) },
    };
  });
}

/** The same lay in EPANET, put together from the figures and not from our assembly. */
function twin(sections: readonly Section[], farGpm: number) {
  const network = new NetworkBuilder();
  const source = network.fixed('tank', 0);
  const manifold = network.node('manifold', 0);
  // The points of the parabola were read as pressure of water at 60 degF.
  const curve = new PowerPumpCurve(400 * HEAD_PER_PSI, (0.02 * HEAD_PER_PSI) / GPM ** 2, 2);
  network.pump('a', source, manifold, curve);
  network.pump('b', source, manifold, curve);
  let at = manifold;
  let height = 0;
  const nozzles: { name: string; link: number; node: number; height: number }[] = [];
  const hose = (from: number, to: number, coefficient: number, feet: number, inches: number) => {
    const resistance = ((coefficient * feet) / 100) * (HEAD_PER_PSI / (100 * GPM) ** 2);
    network.resistance('hose', from, to, resistance, { bore: inches * 0.0254 });
  };
  const fog = (name: string, node: number, gpm: number, psi: number) => {
    const air = network.fixed(`air at ${name}`, height);
    const link = network.resistance(name, node, air, (psi * HEAD_PER_PSI) / (gpm * GPM) ** 2, {
      oneWay: true,
    });
    nozzles.push({ name, link, node, height });
  };
  sections.forEach(({ feet, rise = 0, lateral }, i) => {
    height += rise * FOOT;
    const next = network.node(`wye ${i + 1}`, height);
    hose(at, next, 24, feet, 1.5);
    at = next;
    if (!lateral) return;
    const end = network.node(`end of lateral ${i + 1}`, height);
    hose(at, end, 150, lateral.feet, 1);
    fog(`nozzle ${i + 1}`, end, lateral.gpm, lateral.psi ?? 100);
  });
  fog('far', at, farGpm, 100);
  return { network, nozzles };
}

/** The tolerance: 0.05 psi and 0.05 gpm. */
const HELD_TO = 0.05;

for (const [seed, count] of [
  [1, 4],
  [2, 6],
  [3, 9],
  [4, 14],
  [5, 22],
  [6, 33],
  [7, 47],
  [8, 60],
]) {
  test(`a progressive lay of ${count} laterals on random ground is what EPANET makes of it (seed ${seed})`, async () => {
    const sections = randomSections(new Random(seed), count);
    const far = '{nozzle: {kind: fog, flow: 20 gpm, pressure: 100 psi}, name: far}';
    const answer = await operateLayout(layoutOf(engine() + lay(sections, far)));
    const { network, nozzles } = twin(sections, 20);
    const theirs = await solveByEpanet(network.network, network.hints);
    expect(nozzles).toHaveLength(count + 1);
    for (const { name, link, node, height } of nozzles) {
      const ours = answer.nozzles.find((nozzle) => nozzle.name === name);
      const psi = (theirs.heads[node] - height) / HEAD_PER_PSI;
      expect(Math.abs((ours?.pressure ?? Number.NaN) / PSI - psi), `pressure at ${name}`).toBeLessThan(
        HELD_TO,
      );
      // EPANET reports no flow in a link that it holds shut.
      if (!theirs.shut.includes(link))
        expect(
          Math.abs((ours?.flow ?? Number.NaN) - theirs.flows[link]) / GPM,
          `flow of ${name}`,
        ).toBeLessThan(HELD_TO);
    }
  });
}
