import fc from 'fast-check';
import { expect, test } from 'vitest';
import { operateLayout } from '../../src/study/operation.js';
import { reachOf } from '../../src/study/reach.js';
import { engine, FAR_FOG, GPM, lay, layoutOf, PSI, type Section } from './support.js';

/** What the solver leaves: 1e-6 m of head is 0.0000014 psi. */
const SLACK_PSI = 1e-4;
const SLACK_GPM = 1e-4;

const section = fc
  .record({
    feet: fc.integer({ min: 50, max: 300 }),
    part: fc.integer({ min: -30, max: 30 }),
    gpm: fc.integer({ min: 3, max: 30 }),
    lateralFeet: fc.integer({ min: 20, max: 150 }),
    open: fc.boolean(),
  })
  .map(({ feet, part, gpm, lateralFeet, open }): Section => {
    const lateral = { feet: lateralFeet, gpm, state: open ? ('open' as const) : ('shut' as const) };
    return { feet, rise: Math.round((feet * part) / 100), lateral };
  });

const sections = fc.array(section, { minLength: 1, maxLength: 6 });
const RUNS = { numRuns: 20, seed: 614 };

test('a longer lay never gives the far nozzle more, on the level and uphill', async () => {
  await fc.assert(
    fc.asyncProperty(sections, fc.integer({ min: 1, max: 300 }), async (given, more) => {
      const shorter = await operateLayout(layoutOf(engine() + lay(given, FAR_FOG)));
      const longer = await operateLayout(layoutOf(engine() + lay([...given, { feet: more }], FAR_FOG)));
      const far = (answer: typeof shorter) => (answer.nozzles.at(-1)?.flow ?? Number.NaN) / GPM;
      expect(far(longer)).toBeLessThanOrEqual(far(shorter) + SLACK_GPM);
    }),
    RUNS,
  );
});

test('opening a lateral never raises the flow of another nozzle', async () => {
  await fc.assert(
    fc.asyncProperty(sections, fc.nat(), async (given, which) => {
      const layout = layoutOf(engine() + lay(given, FAR_FOG));
      const name = `nozzle ${(which % given.length) + 1}`;
      const shut = await operateLayout(layout, {
        nozzleState: (one, stated) => (one === name ? 'shut' : stated),
      });
      const open = await operateLayout(layout, {
        nozzleState: (one, stated) => (one === name ? 'open' : stated),
      });
      for (const nozzle of open.nozzles) {
        if (nozzle.name === name) continue;
        const before = shut.nozzles.find((one) => one.name === nozzle.name);
        expect(nozzle.flow / GPM).toBeLessThanOrEqual((before?.flow ?? Number.NaN) / GPM + SLACK_GPM);
        expect(nozzle.pressure / PSI).toBeLessThanOrEqual((before?.pressure ?? Number.NaN) / PSI + SLACK_PSI);
      }
    }),
    RUNS,
  );
});

test('reach falls with slope and with every lateral that is opened, in every staging', async () => {
  const layout = layoutOf(
    engine() + lay([{ feet: 200, lateral: { feet: 100, gpm: 12 } }, { feet: 100 }], FAR_FOG),
  );
  const { stagings } = await reachOf(layout, { grades: [0, 0.05, 0.15, 0.4, 1], laterals: [0, 1, 3] });
  expect(stagings.map(({ staging }) => staging)).toEqual(['parallel', 'series', 'series_reversed', 'a', 'b']);
  for (const { rows } of stagings) {
    for (const [i, row] of rows.entries()) {
      for (const [j, cell] of row.cells.entries()) {
        if (i > 0) expect(cell.length).toBeLessThanOrEqual(rows[i - 1].cells[j].length);
        if (j > 0) expect(cell.length).toBeLessThanOrEqual(row.cells[j - 1].length);
      }
    }
    expect(rows[0].cells[0].length).toBeGreaterThan(rows[4].cells[0].length);
  }
});

test('a lay of just the reach serves its nozzle, and two feet more do not', async () => {
  const thirsty = '{nozzle: {kind: fog, flow: 60 gpm, pressure: 100 psi}, name: far}';
  const layout = layoutOf(engine() + lay([{ feet: 100 }], thirsty));
  const { stagings } = await reachOf(layout, { grades: [0, 0.25], laterals: [0] });
  for (const { staging, rows } of stagings) {
    for (const { grade, cells } of rows) {
      expect(cells[0].limit).toBe('nozzle');
      const at = async (more: number) => {
        const feet = cells[0].length / 0.3048 + more;
        const rise = (feet * grade) / Math.hypot(1, grade);
        const given = layoutOf(
          engine() + lay([{ feet: Number(feet.toFixed(6)), rise: Number(rise.toFixed(6)) }], thirsty),
        );
        return (await operateLayout({ ...given, staging })).nozzles[0].pressure / PSI;
      };
      expect(await at(0)).toBeGreaterThan(100 - 1e-3);
      expect(await at(2)).toBeLessThan(100);
    }
  }
});
