import { describe, expect, test } from 'vitest';
import { HORSEPOWER } from '../../src/physics/customary.js';
import { Rig, SolvedAssembly } from '../../src/study/rig.js';
import { engineOf, FREE_CHECK, layoutFrom, orificePressure, parabolic, solve } from '../support/layouts.js';
import { GPM, PSI } from '../support/units.js';

/**
 * Engines at the end of their power on pumps whose efficiency leaps from row to row, against the same balance found by other means:
 * in closed form, by halving, and by following the engines in small steps of time. Figures in gpm, psi and hp.
 */

type Rows = [number, number][];

/** A pump of P = shutoff - k q^2 with its rows of efficiency and its engine. */
class Pump {
  readonly shutoff: number;
  readonly k: number;
  readonly rows: Rows;
  readonly horsepower: number;
  readonly exponent: number;

  constructor(shutoff: number, rows: Rows, horsepower: number, lugging: 'constant_power' | 'flat_torque') {
    this.shutoff = shutoff;
    this.k = (shutoff - 250) / 75 ** 2;
    this.rows = rows;
    this.horsepower = horsepower;
    this.exponent = lugging === 'constant_power' ? 3 : 2;
  }

  get model() {
    return parabolic(this.shutoff, 75, 250, undefined, {
      power: {
        rated: `${this.horsepower} hp`,
        lugging: this.exponent === 3 ? 'constant_power' : 'flat_torque',
      },
      efficiency: this.rows.map(([q, part]) => [`${q} gpm`, `${100 * part} %`]),
    });
  }

  /** hp at rated speed and a flow. */
  power(q: number): number {
    const { rows } = this;
    const atRow = ([x, e]: [number, number]) =>
      ((((this.shutoff - this.k * x * x) * x) / e) * (GPM * PSI)) / HORSEPOWER;
    if (q >= rows[rows.length - 1][0]) return atRow(rows[rows.length - 1]);
    if (q < rows[0][0]) {
      const [first, second] = [atRow(rows[0]), atRow(rows[1])];
      const reached = first - ((second - first) / (rows[1][0] - rows[0][0])) * rows[0][0];
      const none = Math.min(first, Math.max(0.3 * first, reached));
      return none + ((first - none) * Math.max(0, q)) / rows[0][0];
    }
    const i = rows.findIndex(([x]) => x > q) - 1;
    const [[x0, e0], [x1, e1]] = [rows[i], rows[i + 1]];
    return atRow([q, e0 + ((e1 - e0) * (q - x0)) / (x1 - x0)]);
  }

  /** The speed that the engine has the power for, over the speed it has. */
  lack(q: number, speed: number): number {
    return (this.horsepower / this.power(q / speed)) ** (1 / this.exponent) / speed;
  }
}

const FALLING: Rows = [
  [36, 0.7],
  [72, 0.15],
  [108, 0.6],
];
const tip = (inches: number) => ({
  nozzle: { kind: 'smooth_bore', bore: `${inches} in`, discharge_coefficient: 1 },
  name: 'tip',
});

async function found(pump: Pump, inches: number, relay = 0) {
  const document = {
    engine: engineOf(pump.model),
    lay: [tip(inches)],
    ...(relay && { supply: { relay: { pressure: `${relay} psi` } } }),
  };
  const solved = await solve(document);
  return { speed: solved.point.speedOf(solved.pump('pump a')), flow: solved.gpm('pump a') };
}

describe('one engine on one tip', () => {
  const tips = [0.3, 0.4, 0.5, 0.55, 0.6, 0.62, 0.64, 0.66, 0.68, 0.7, 0.75, 0.8, 0.9, 1, 1.2];

  // With nothing but a tip the pump works at one and the same place of its curve at every speed: S - k x^2 = R x^2.
  for (const lugging of ['constant_power', 'flat_torque'] as const) {
    for (const horsepower of [8, 14, 20, 24]) {
      test(`${horsepower} hp at ${lugging}: the speed is that of its power at x = sqrt(S / (k + R)), at every tip`, async () => {
        const pump = new Pump(400, FALLING, horsepower, lugging);
        for (const inches of tips) {
          const x = Math.sqrt(pump.shutoff / (pump.k + orificePressure(inches, 1)));
          const speed = Math.min(1, pump.lack(x, 1));
          const { speed: held, flow } = await found(pump, inches);
          expect(held, `${inches} in`).toBeCloseTo(speed, 4);
          expect(flow / (speed * x), `${inches} in`).toBeCloseTo(1, 4);
        }
      });
    }
  }

  test('the tips take it through where more opening gives less flow, and where it gives more pressure', async () => {
    const pump = new Pump(400, FALLING, 14, 'flat_torque');
    const states = await Promise.all(tips.map((inches) => found(pump, inches)));
    const flows = states.map(({ flow }) => flow);
    const pressures = flows.map((flow, i) => orificePressure(tips[i], flow));
    expect(flows.some((flow, i) => i > 0 && flow < flows[i - 1])).toBe(true);
    expect(pressures.some((pressure, i) => i > 0 && pressure > pressures[i - 1])).toBe(true);
  });

  test('fed by a relay it is the first balance below governed speed, by halving', async () => {
    for (const relay of [10, 60, 150, 300]) {
      for (const inches of tips) {
        for (const lugging of ['constant_power', 'flat_torque'] as const) {
          const pump = new Pump(400, FALLING, 14, lugging);
          const fall = pump.k + orificePressure(inches, 1);
          const lack = (s: number) => pump.lack(Math.sqrt((pump.shutoff * s * s + relay) / fall), s) - 1;
          let high = 1;
          let speed = 1;
          if (lack(1) < 0) {
            let low = 1;
            while (lack(low) < 0) {
              high = low;
              low -= 1e-3;
            }
            for (let i = 0; i < 60; i++) {
              speed = (low + high) / 2;
              if (lack(speed) < 0) high = speed;
              else low = speed;
            }
          }
          const { speed: held } = await found(pump, inches, relay);
          expect(held, `${relay} psi, ${inches} in, ${lugging}`).toBeCloseTo(speed, 4);
        }
      }
    }
  });
});

describe('a flow that is drawn, whatever the pressure', () => {
  test('is given at the highest speed that balances, and past it at the next below', async () => {
    const pump = new Pump(400, FALLING, 14, 'flat_torque');
    const rig = await Rig.of(layoutFrom({ engine: engineOf(pump.model), lay: [] }));
    const assembly = rig.assemble({ staging: 'a', lay: 'none' });
    const solved = new SolvedAssembly(assembly);
    const [laid] = assembly.pumps;
    let jumps = 0;
    let before = 1;
    for (let q = 5; q < 70; q += 0.5) {
      let speed = 1;
      while (pump.lack(q, speed) < 1) speed -= 1e-5;
      solved.setDemand(assembly.ends[0].place.node, q * GPM);
      const held = solved.solve().speedOf(laid);
      expect(Math.abs(held - speed), `${q} gpm`).toBeLessThan(2e-5);
      if (before - held > 0.1) jumps++;
      before = held;
    }
    expect(jumps).toBe(1);
  });
});

describe('two engines side by side', () => {
  test('come to where small steps of time lead them from their governed speeds', async () => {
    let both = 0;
    for (const inches of [0.5, 0.6, 0.7, 0.8, 0.9, 1, 1.1]) {
      const a = new Pump(400, FALLING, 14, 'flat_torque');
      const b = new Pump(
        360,
        [
          [30, 0.3],
          [60, 0.7],
          [95, 0.25],
        ],
        16,
        'constant_power',
      );
      const pumps = [a, b];
      const tipLoss = orificePressure(inches, 1);
      /** Flows of both by halving the pressure where they meet. */
      const flowsAt = (speeds: number[]) => {
        const at = (psi: number) =>
          pumps.map((p, i) => Math.sqrt(Math.max(0, p.shutoff * speeds[i] ** 2 - psi) / p.k));
        let low = 0;
        let high = 400;
        for (let i = 0; i < 60; i++) {
          const middle = (low + high) / 2;
          const [qa, qb] = at(middle);
          if (tipLoss * (qa + qb) ** 2 < middle) high = middle;
          else low = middle;
        }
        return at(low);
      };
      let speeds = [1, 1];
      for (let i = 0; i < 20_000; i++) {
        const flows = flowsAt(speeds);
        speeds = speeds.map((s, n) => Math.min(1, s * (1 + 0.01 * (pumps[n].lack(flows[n], s) - 1))));
      }
      if (speeds.every((s) => s < 1)) both++;
      const engine = engineOf(a.model, b.model, { plumbing: { discharge: [FREE_CHECK] } });
      const solved = await solve({ engine, staging: 'parallel', lay: [tip(inches)] });
      ['pump a', 'pump b'].forEach((name, n) => {
        expect(solved.point.speedOf(solved.pump(name)), `${name} at ${inches} in`).toBeCloseTo(speeds[n], 4);
      });
    }
    expect(both).toBeGreaterThan(2);
  });
});
