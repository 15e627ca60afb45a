import { describe, expect, it } from 'vitest';
import { GrowingLay } from '../../src/study/growing-lay.js';
import { Rig } from '../../src/study/rig.js';
import { type EpanetHint, solveByEpanet } from '../support/epanet.js';
import { Random } from '../support/random.js';
import { GPM, PSI } from '../support/units.js';
import { randomPlan } from './progressive-layouts.js';

/** What a progressive lay is held to against the other engine. */
const HELD_TO = { psi: 0.05, gpm: 0.05 };

/**
 * The plan is solved as one network whose nozzles are opened and shut; EPANET is given the lay as it lies at that length, with
 * nothing of what comes after. Pumps are of three points, so that both draw the same curve; past its end
 * they do not, and no lay here goes there.
 */
async function worstOf(seed: number, laterals: number) {
  const layout = randomPlan(new Random(seed), laterals);
  const plan = layout.progressive;
  if (plan === undefined) throw new Error('the plan was not read');
  const rig = await Rig.of(layout);
  const lay = new GrowingLay(rig, plan);
  const lengths = [...new Set([1, Math.ceil(plan.trunk.length / 2), plan.trunk.length])];
  const worst = { psi: 0, gpm: 0, compared: 0, flowing: 0 };
  for (const length of lengths) {
    const laid = lay.at(length);
    const plain = rig.with(lay.layoutAt(length)).assemble({ staging: layout.staging, lay: 'whole' });
    const hints = new Map<number, EpanetHint>(
      plain.pumps.map(({ link }) => [link, { sampleFlows: [0, 60 * GPM, 130 * GPM] }]),
    );
    const theirs = await solveByEpanet(plain.network, hints);
    expect(laid.point.assembly.pumps.some((pump) => laid.point.isOffCurve(pump))).toBe(false);
    const perMetre = laid.point.pressureOf(1) / PSI;
    for (const nozzle of laid.nozzles) {
      const other = plain.nozzles.find(
        ({ name, path }) => name === nozzle.name && path.join() === nozzle.path.join(),
      );
      if (other === undefined) throw new Error(`EPANET was not given ${nozzle.name}`);
      expect(nozzle.state, nozzle.name).toBe(other.state);
      const pressure = (theirs.heads[other.inlet.node] - other.inlet.elevation) * perMetre;
      const flow = other.link === undefined ? 0 : theirs.flows[other.link] / GPM;
      const ours =
        nozzle.state === 'open' && nozzle.link !== undefined ? laid.point.flow(nozzle.link) / GPM : 0;
      worst.psi = Math.max(worst.psi, Math.abs(laid.point.totalPressure(nozzle.inlet) / PSI - pressure));
      worst.gpm = Math.max(worst.gpm, Math.abs(ours - flow));
      worst.compared += 1;
      if (flow > 0.1) worst.flowing += 1;
    }
  }
  return worst;
}

describe('progressive lays over random ground agree with EPANET 2.3 within 0.05 psi and 0.05 gpm', () => {
  for (const [seed, laterals] of [4, 5, 7, 9, 12, 16, 20, 26, 33, 41, 50, 60].entries()) {
    it(`${laterals} laterals, at three lengths`, async () => {
      const worst = await worstOf(seed + 1, laterals);
      expect(worst.compared).toBeGreaterThanOrEqual(laterals);
      expect(worst.flowing).toBeGreaterThan(0);
      expect(worst.psi).toBeLessThan(HELD_TO.psi);
      expect(worst.gpm).toBeLessThan(HELD_TO.gpm);
    });
  }
});
