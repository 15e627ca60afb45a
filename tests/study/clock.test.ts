import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ShuttleDocument } from '../../src/layout/schema/shuttle.js';
import { cardText } from '../../src/report/card.js';
import { cardOf } from '../../src/study/card.js';
import { clockOf } from '../../src/study/clock.js';
import { DrawDown } from '../../src/study/drawdown.js';
import { governed } from '../../src/study/governor.js';
import { Rig } from '../../src/study/rig.js';
import { firstGap, shuttleRound, siteFlow, sustainedFlow, tendersNeeded } from '../../src/study/shuttle.js';
import { resolved } from '../../src/study/tank-clock.js';
import { GALLON, GPM } from '../support/units.js';
import { layoutFrom } from './progressive-layouts.js';

const MINUTE = 60;
const MILE = 1609.344;

function shuttle(given: Partial<ShuttleDocument> = {}): ShuttleDocument {
  return { tenders: 1, tank: 3000 * GALLON, fill: 6 * MINUTE, dump: 6 * MINUTE, distance: 0, ...given };
}

describe('tender-shuttle formula of fire services (from memory)', () => {
  it('3,000 gal in 12 min make 225 gpm', () => {
    expect(sustainedFlow(shuttle()) / GPM).toBeCloseTo(225, 6);
  });

  it('1,200 gal, 5 miles each way and 6 min of handling make 44 gpm, reckoned leg by leg', () => {
    const one = shuttle({ tank: 1200 * GALLON, fill: 3 * MINUTE, dump: 3 * MINUTE, distance: 5 * MILE });
    expect(shuttleRound(one).there / MINUTE).toBeCloseTo(0.65 + 1.7 * 5, 9);
    expect(Math.round(sustainedFlow(one) / GPM)).toBe(44);
  });

  it('the same 5 miles taken as the whole trip would make 71 gpm', () => {
    // 0.65 + 1.7 x 5 = 9.15 min once: half of it each way, at the speed that makes it so.
    const speed = (2.5 * MILE) / ((9.15 / 2) * MINUTE);
    const one = shuttle({
      tank: 1200 * GALLON,
      fill: 3 * MINUTE,
      dump: 3 * MINUTE,
      distance: 2.5 * MILE,
      speed,
    });
    expect(Math.round(sustainedFlow(one) / GPM)).toBe(71);
  });

  it('a stated speed stands for the formula, and a road back of its own counts', () => {
    const one = shuttle({ distance: 4 * MILE, speed: 10, distance_back: 6 * MILE, speed_back: 12 });
    expect(shuttleRound(one)).toMatchObject({ there: (4 * MILE) / 10, back: (6 * MILE) / 12 });
  });
});

describe('a tender shuttle', () => {
  it('needs as many tenders as sustain the flow, and one fewer does not', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 5, max: 120, noNaN: true }),
        fc.double({ min: 0, max: 12, noNaN: true }),
        (gpm, miles) => {
          const one = shuttle({ tank: 2000 * GALLON, distance: miles * MILE });
          const needed = tendersNeeded(one, gpm * GPM) as number;
          expect(sustainedFlow({ ...one, tenders: needed })).toBeGreaterThanOrEqual(gpm * GPM * (1 - 1e-9));
          if (needed > 1) expect(sustainedFlow({ ...one, tenders: needed - 1 })).toBeLessThan(gpm * GPM);
        },
      ),
    );
  });

  it('no number of tenders passes more than one fill and dump site can', () => {
    const one = shuttle({ tenders: 50 });
    expect(sustainedFlow(one)).toBe(siteFlow(one));
    expect(tendersNeeded(one, siteFlow(one) * 1.01)).toBeUndefined();
  });

  it('fails first when the tank is empty before the first tender comes', () => {
    const late = shuttle({ first_in: 20 * MINUTE });
    expect((firstGap(late, 50 * GPM, 450 * GALLON, 450 * GALLON)?.from ?? 0) / MINUTE).toBeCloseTo(9, 9);
  });

  it('never fails where it sustains more than is drawn and the tanks bridge the rounds', () => {
    const two = shuttle({ tenders: 2, distance: 2 * MILE });
    expect(sustainedFlow(two)).toBeGreaterThan(100 * GPM);
    expect(firstGap(two, 100 * GPM, 450 * GALLON, 3450 * GALLON)).toBeUndefined();
  });

  it('fails in the end where it sustains less than is drawn, when stock and water brought are used up', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1.05, max: 4, noNaN: true }),
        fc.integer({ min: 1, max: 4 }),
        (over, tenders) => {
          const some = shuttle({ tenders, distance: 3 * MILE });
          const draw = sustainedFlow(some) * over;
          const stored = 450 * GALLON;
          const gap = firstGap(some, draw, stored, 5000 * GALLON)?.from as number;
          expect(gap).toBeGreaterThanOrEqual((stored / draw) * (1 - 1e-9));
          // What was drawn by then is what was there and what at most was brought: a load each, and one more under way.
          const brought = (gap / shuttleRound(some).cycle + 1) * tenders * 0.9 * some.tank;
          expect(draw * gap).toBeLessThanOrEqual(stored + brought + 1e-6);
        },
      ),
    );
  });
});

const GRAVITY_FED = layoutFrom(`
title: a tank high above its pump
engine:
  name: gravity
  tank: {capacity: 500 gal, outlet_height: 60 ft, depth: 50 ft}
  pumps:
    a: {model: {name: small, points: [[0 gpm, 60 psi], [60 gpm, 40 psi], [100 gpm, 10 psi]], power: {rated: 8 hp, fuel: gasoline, burn: 1 gal/h}}, fuel_tank: 2 gal}
staging: a
lay:
  - hose: forestry-1.5
    length: 300 ft
  - nozzle: tip-3/8
shuttle: {tenders: 1, tank: 1,000 gal, fill: 5 min, dump: 4 min, distance: 4 mi}
`);

describe('draw-down with the level of the tank', () => {
  it('is the time in which the flow, followed minute by minute, adds up to what was drawn', async () => {
    const { tank } = await clockOf(GRAVITY_FED);
    if (!tank?.endurance) throw new Error('the tank does not run down');
    const rig = await Rig.of(GRAVITY_FED);
    const solved = resolved(governed(rig, 'a'));
    const drawDown = new DrawDown(GRAVITY_FED.engine.tank as never, solved);
    // Runge and Kutta's rule in time, where the clock integrates over volume.
    let volume = tank.reserve + tank.usable;
    const steps = 200;
    const step = tank.endurance / steps;
    let drawn = 0;
    for (let i = 0; i < steps; i++) {
      const k1 = drawDown.flowAt(volume);
      const k2 = drawDown.flowAt(volume - (k1 * step) / 2);
      const k3 = drawDown.flowAt(volume - (k2 * step) / 2);
      const k4 = drawDown.flowAt(volume - k3 * step);
      const out = ((k1 + 2 * k2 + 2 * k3 + k4) * step) / 6;
      drawn += out;
      volume -= out;
    }
    expect(drawn / tank.usable).toBeCloseTo(1, 5);
    expect(volume / tank.reserve).toBeCloseTo(1, 4);
  });

  it('is longer than flow times minutes, as the flow falls with the level', async () => {
    const { tank } = await clockOf(GRAVITY_FED);
    expect(tank?.flowLow).toBeLessThan((tank?.flowFull as number) * 0.95);
    expect(tank?.endurance as number).toBeGreaterThan((tank?.flowTimesMinutes as number) * 1.01);
  });

  it('keeps 10 % back and fills the hose first: 500 gal less 50, less 27.5 for 300 ft of 1-1/2 in hose', async () => {
    const { tank } = await clockOf(GRAVITY_FED);
    expect((tank?.reserve as number) / GALLON).toBeCloseTo(50, 9);
    // NWCG Firefighter Math Table 3.1 prints 9.2 gal in 100 ft.
    expect((tank?.hoseFill as number) / GALLON / 3).toBeCloseTo(9.2, 1);
    expect(tank?.usable).toBeCloseTo(0.45 * 1000 * GALLON - (tank?.hoseFill as number), 9);
  });

  it('500 gal at 100 gpm last 4.5 min, and 3.6 where 1,000 ft of 1-1/2 in trunk fill first', () => {
    // Users ask for this sum as it stands: tank x 0.9, less the fill, over the flow.
    const perFoot = (Math.PI * (1.5 * 0.0254) ** 2 * 0.3048) / 4 / GALLON;
    expect((500 * 0.9) / 100).toBe(4.5);
    expect(((500 * 0.9 - 1000 * perFoot) / 100).toFixed(1)).toBe('3.6');
  });
});

describe('fuel', () => {
  it('lasts what is on board over what is burnt, and the first to run dry is named', async () => {
    const { fuel, firstRefuelling } = await clockOf(GRAVITY_FED);
    expect(fuel[0].lasts as number).toBeCloseTo(2 * 3600, 6);
    expect(firstRefuelling?.pump).toBe('pump a');
  });
});

describe('a card', () => {
  it('is one page of 60 columns of plain text, in either system of units', async () => {
    const card = await cardOf(GRAVITY_FED);
    for (const units of ['us', 'si'] as const) {
      const lines = cardText(card, units, '2030-01-02').split('\n');
      expect(lines.length).toBeLessThanOrEqual(61);
      for (const line of lines) {
        expect(line.length).toBeLessThanOrEqual(60);
        expect(line).toMatch(/^[\x20-\x7e]*$/);
      }
      expect(lines.join('\n')).toContain('2030-01-02');
      for (const word of ['PUMPS', 'LINE', 'OPEN', 'WATER', 'TENDER', 'HOSE'])
        expect(
          lines.some((line) => line.startsWith(word)),
          word,
        ).toBe(true);
    }
  });
});
