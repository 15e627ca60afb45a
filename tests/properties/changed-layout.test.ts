import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkLayout } from '../../src/study/rating.js';
import { type Document, engineOf, layoutFrom, parabolic } from '../support/layouts.js';
import { flowOf, layouts, PATIENCE, SEED } from './support.js';

const RUNS = { numRuns: 25, seed: SEED, endOnFailure: true };
/** Ten times what the solver promises, m3/s. */
const FLOW = 1e-7;
/** Pumps that work apart share a suction, where the one can take the other's water: those are left out. */
const TOGETHER = ['parallel', 'series', 'series_reversed', 'a', 'b'];

function figure(low: number, high: number): fc.Arbitrary<number> {
  return fc.double({ min: low, max: high, noNaN: true });
}

async function nozzleFlows(document: Document): Promise<Map<string, number> | undefined> {
  const answer = await flowOf(document);
  return answer && new Map(answer.nozzles.map(({ name, flow }) => [name, flow]));
}

async function expectNoMore(less: Document, more: Document): Promise<void> {
  const [small, large] = [await nozzleFlows(less), await nozzleFlows(more)];
  expect(small === undefined).toBe(large === undefined);
  for (const [name, flow] of small ?? [])
    expect(flow, name).toBeLessThanOrEqual((large?.get(name) as number) + FLOW);
}

describe('a throttle raised', () => {
  it(
    'never lowers the flow of a nozzle',
    async () => {
      await fc.assert(
        fc.asyncProperty(
          layouts({ stagings: TOGETHER }),
          figure(0.3, 1.1),
          figure(0.3, 1.1),
          async (document, one, other) => {
            const throttle = (part: number) => ({ ...document, throttle: `${100 * part} %` });
            await expectNoMore(throttle(Math.min(one, other)), throttle(Math.max(one, other)));
          },
        ),
        RUNS,
      );
    },
    PATIENCE,
  );
});

describe('hose added', () => {
  const hose = (feet: number) => ({
    hose: { inside_diameter: '1.5 in', coefficient: 24 },
    length: `${feet} ft`,
  });

  /** One lay, and a throttle that does not make up for what the hose costs. */
  function withLay(document: Document, added: unknown[]): Document {
    const { lay, throttle, ...rest } = document;
    const first = [hose(0.01), ...added];
    const longer = (steps: unknown) => [...first, ...(steps as unknown[])];
    const speed = JSON.stringify(throttle ?? '').includes('discharge_pressure') ? {} : { throttle };
    if (Array.isArray(lay)) return { ...rest, ...speed, lay: longer(lay) };
    const entries = Object.entries(lay as Document).slice(0, 1);
    return {
      ...rest,
      ...speed,
      lay: Object.fromEntries(entries.map(([name, steps]) => [name, longer(steps)])),
    };
  }

  it(
    'before a lay never raises the flow of a nozzle',
    async () => {
      await fc.assert(
        fc.asyncProperty(layouts({ stagings: TOGETHER }), figure(10, 800), async (document, feet) => {
          await expectNoMore(withLay(document, [hose(feet)]), withLay(document, []));
        }),
        RUNS,
      );
    },
    PATIENCE,
  );
});

describe('two equal pumps without plumbing', () => {
  const pumps = fc.record({
    shutoff: figure(100, 450),
    flow: figure(20, 300),
    part: figure(0.3, 0.9),
  });
  const engine = ({ shutoff, flow, part }: { shutoff: number; flow: number; part: number }) => {
    const pump = parabolic(shutoff, flow, part * shutoff);
    return engineOf(pump, pump);
  };

  it(
    'in parallel pass twice the flow of one at the same pressure',
    async () => {
      await fc.assert(
        fc.asyncProperty(pumps, figure(0.4, 0.95), async (pump, part) => {
          const custom = { flow: `${pump.flow} gpm`, pressure: `${part * pump.shutoff} psi` };
          const { stagings } = await checkLayout(layoutFrom({ engine: engine(pump), typing: { custom } }));
          const flowIn = (name: string) =>
            stagings.find(({ staging }) => staging === name)?.atRequiredPressure?.flow as number;
          // Flows are found to 10 Pa, which near shutoff is the most of a flow; hence a part in a thousand.
          expect(Math.abs(flowIn('parallel') / (2 * flowIn('a')) - 1)).toBeLessThan(1e-3);
        }),
        RUNS,
      );
    },
    PATIENCE,
  );

  it(
    'in series make twice the pressure of one at the same flow',
    async () => {
      await fc.assert(
        fc.asyncProperty(pumps, figure(0.05, 1), async (pump, part) => {
          const custom = { flow: `${part * pump.flow} gpm`, pressure: '100 psi' };
          const { stagings } = await checkLayout(layoutFrom({ engine: engine(pump), typing: { custom } }));
          const pressureIn = (name: string) =>
            stagings.find(({ staging }) => staging === name)?.atRequiredFlow?.pressure as number;
          expect(pressureIn('series') / pressureIn('a')).toBeCloseTo(2, 6);
          expect(pressureIn('series_reversed') / pressureIn('b')).toBeCloseTo(2, 6);
        }),
        RUNS,
      );
    },
    PATIENCE,
  );
});
