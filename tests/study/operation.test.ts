import { describe, expect, it } from 'vitest';
import type { FlowAnswer, NozzleAnswer } from '../../src/study/answer.js';
import { operateLayout } from '../../src/study/operation.js';
import {
  coefficientLoss,
  type Document,
  engineOf,
  FREE_CHECK,
  layoutFrom,
  orificeFlow,
  parabola,
  parabolic,
  velocityPressure,
} from '../support/layouts.js';
import { FOOT, GALLON, GPM, PSI } from '../support/units.js';

const A = parabolic(400, 75, 250);
const HOSE = { hose: { inside_diameter: '1.5 in', coefficient: 24 }, length: '200 ft', name: 'hose' };
const smooth = (bore: string, more: Document = {}): Document => ({
  nozzle: { kind: 'smooth_bore', bore, ...more },
  name: 'tip',
});
/** What 200 ft of 1-1/2 in hose hold, gal. */
const FILL = ((Math.PI / 4) * 1.5 ** 2 * 200 * 12) / 231;
/** N in a pound of force. */
const POUND_FORCE = 0.45359237 * 9.80665;

async function operate(lay: unknown, document: Document = {}): Promise<FlowAnswer> {
  return operateLayout(layoutFrom({ engine: engineOf(A), lay, ...document }));
}

async function atNozzle(step: Document): Promise<NozzleAnswer & { gpm: number; psi: number }> {
  const { nozzles } = await operate([HOSE, step]);
  const [nozzle] = nozzles;
  return { ...nozzle, gpm: nozzle.flow / GPM, psi: nozzle.pressure / PSI };
}

describe('lines', () => {
  it('each has its flow, its velocity, its loss and the pressure at both ends', async () => {
    const { lines } = await operate([{ ...HOSE, lines: 2 }, smooth('1/2 in')]);
    const [line] = lines;
    const gpm = line.flow / GPM;
    expect(line.name).toBe('hose');
    expect(line.loss / PSI).toBeCloseTo(coefficientLoss(24, gpm, 200) / 4, 3);
    expect(line.inletPressure / PSI).toBeCloseTo(parabola(400, 75, 250, gpm), 3);
    expect((line.inletPressure - line.outletPressure) / PSI).toBeCloseTo(line.loss / PSI, 6);
    // 0.408 gpm / d^2 in ft/s: NWCG and textbooks alike; half of it in each of two lines.
    expect((line.velocity as number) / FOOT).toBeCloseTo((0.4085 * (gpm / 2)) / 1.5 ** 2, 1);
  });
});

describe('nozzles', () => {
  it('a smooth bore pushes back with 1.57 d^2 NP lbf', async () => {
    const { reaction, psi } = await atNozzle(smooth('1/2 in'));
    expect((reaction as number) / POUND_FORCE).toBeCloseTo(1.57 * 0.25 * psi, 3);
  });

  it('a fog nozzle pushes back with 0.0505 Q sqrt(NP) lbf', async () => {
    const fog = { nozzle: { kind: 'fog', flow: '60 gpm', pressure: '100 psi' } };
    const { reaction, psi, gpm } = await atNozzle(fog);
    expect((reaction as number) / POUND_FORCE).toBeCloseTo(0.0505 * gpm * Math.sqrt(psi), 3);
  });

  it('a smooth bore of 1 in reaches NP/2 + 26 + 5 for each 1/8 in above 3/4', async () => {
    const big = engineOf(parabolic(150, 250, 100));
    const { nozzles } = await operate([smooth('1 in')], { engine: big });
    const { reach, pressure } = nozzles[0];
    expect((reach as number) / FOOT).toBeCloseTo(pressure / PSI / 2 + 26 + 10, 3);
  });

  it('a tip below 3/4 in has no published reach, and none is told', async () => {
    expect((await atNozzle(smooth('1/2 in'))).reach).toBeUndefined();
  });

  it('within, below and above its working range', async () => {
    const within = async (from: string, to: string) =>
      (await atNozzle(smooth('3/8 in', { working: { from, to } }))).inRange;
    const { psi } = await atNozzle(smooth('3/8 in'));
    expect(await within(`${psi - 5} psi`, `${psi + 5} psi`)).toBe(true);
    expect(await within(`${psi + 5} psi`, `${psi + 10} psi`)).toBe(false);
    expect(await within(`${psi - 10} psi`, `${psi - 5} psi`)).toBe(false);
  });

  it('one without a known range is in none', async () => {
    const nozzle = await atNozzle(smooth('3/8 in'));
    expect(nozzle.inRange).toBeUndefined();
    expect(nozzle.range).toBeUndefined();
  });

  it('one that is shut has no flow, no push and no range, and stands under pressure', async () => {
    const nozzle = await atNozzle({ ...smooth('3/8 in', { working: { from: '40 psi' } }), state: 'shut' });
    expect(nozzle).toMatchObject({ state: 'shut', flow: 0 });
    expect(nozzle.reaction).toBeUndefined();
    expect(nozzle.inRange).toBeUndefined();
    expect(nozzle.psi).toBeCloseTo(400, 3);
  });

  it('the total flow is that of all ends', async () => {
    const to = [{ name: 'side', steps: [HOSE, { ...smooth('1/4 in'), name: 'other' }] }];
    const answer = await operate([{ branch: 'plain', to }, HOSE, smooth('3/8 in')]);
    const sum = answer.nozzles.reduce((all, { flow }) => all + flow, 0);
    expect(answer.totalFlow).toBeCloseTo(sum, 12);
    expect(answer.totalFlow / GPM).toBeCloseTo(answer.pumps[0].flow / GPM, 4);
  });
});

describe('the tank', () => {
  it('lasts 90 % of its water less what fills the hose over the flow drawn', async () => {
    const { tank, totalFlow } = await operate([HOSE, smooth('3/8 in')]);
    expect((tank?.hoseFill as number) / GALLON).toBeCloseTo(FILL, 6);
    expect((tank?.usable as number) / GALLON).toBeCloseTo(450 - FILL, 6);
    expect((tank?.endurance as number) / 60).toBeCloseTo((450 - FILL) / (totalFlow / GPM), 3);
  });

  it('is not drawn down by what the cooling line and the relief valve bring back', async () => {
    const engine = engineOf(A, undefined, {
      plumbing: { cooling: { orifice: '1/8 in' } },
      relief: { opens_at: '220 psi' },
    });
    const { tank, totalFlow, pumps } = await operate([HOSE, smooth('3/8 in')], { engine });
    expect(pumps[0].flow).toBeGreaterThan(1.1 * totalFlow);
    expect((tank?.endurance as number) / 60).toBeCloseTo((450 - FILL) / (totalFlow / GPM), 2);
  });

  it('lasts for ever where nothing flows', async () => {
    const { tank } = await operate([HOSE, { cap: true }]);
    expect(tank?.endurance).toBeNull();
  });

  it('is not told of where the water comes from elsewhere', async () => {
    const { tank } = await operate([HOSE, smooth('3/8 in')], { supply: { relay: { pressure: '60 psi' } } });
    expect(tank).toBeUndefined();
  });
});

describe('pumps', () => {
  const tables = {
    rated_speed: '6,500 rpm',
    efficiency: [
      ['20 gpm', '30 %'],
      ['60 gpm', '50 %'],
      ['100 gpm', '55 %'],
    ],
    npsh_required: [
      ['20 gpm', '6 ft'],
      ['100 gpm', '16 ft'],
    ],
    power: { rated: '23 hp' },
  };
  const told = engineOf(parabolic(400, 75, 250, 120, tables));

  it('each has what it adds, what stands before and after it, and its speed', async () => {
    const { pumps } = await operate([HOSE, smooth('1/2 in')], {
      engine: told,
      supply: { relay: { pressure: '60 psi' } },
    });
    const [pump] = pumps;
    const gpm = pump.flow / GPM;
    expect(pump.headRise / PSI).toBeCloseTo(parabola(400, 75, 250, gpm), 3);
    expect(pump.inletPressure / PSI).toBeCloseTo(60, 3);
    expect(pump.dischargePressure / PSI).toBeCloseTo(60 + parabola(400, 75, 250, gpm), 3);
    expect(pump.speed).toBeCloseTo(6500, 6);
    expect(pump.share).toBeCloseTo(1, 9);
  });

  it('one without a rated speed has no speed', async () => {
    const { pumps } = await operate([HOSE, smooth('1/2 in')]);
    expect(pumps[0].speed).toBeUndefined();
  });

  it('draws gpm psi / (1714 efficiency) hp, efficiency straight between its points', async () => {
    const { pumps } = await operate([HOSE, smooth('3/8 in')], { engine: told });
    const [pump] = pumps;
    const gpm = pump.flow / GPM;
    expect(gpm).toBeGreaterThan(60);
    const efficiency = 0.5 + (0.05 * (gpm - 60)) / 40;
    const horsepower = (gpm * (pump.headRise / PSI)) / 1714 / efficiency;
    // 1714 is rounded from 1714.3.
    expect(Math.abs((pump.power as number) / 745.7 / horsepower - 1)).toBeLessThan(1e-3);
  });

  it('at part throttle stands at flow over speed of its tables, and needs speed squared of their suction head', async () => {
    const { pumps } = await operate([HOSE, smooth('3/8 in')], { engine: told, throttle: '80 %' });
    const [pump] = pumps;
    const gpm = pump.flow / GPM;
    const rated = gpm / 0.8;
    const efficiency = rated < 60 ? 0.3 + (0.2 * (rated - 20)) / 40 : 0.5 + (0.05 * (rated - 60)) / 40;
    const horsepower = (gpm * (pump.headRise / PSI)) / 1714 / efficiency;
    expect(Math.abs((pump.power as number) / 745.7 / horsepower - 1)).toBeLessThan(1e-3);
    expect((pump.npshRequired as number) / FOOT).toBeCloseTo(0.64 * (6 + (10 * (rated - 20)) / 80), 4);
    expect(pump.speed).toBeCloseTo(5200, 6);
  });

  it('outside its tables nothing is told of power or suction head', async () => {
    const { pumps } = await operate([HOSE, smooth('1/8 in')], { engine: told });
    expect(pumps[0].flow / GPM).toBeLessThan(20);
    expect(pumps[0].power).toBeUndefined();
    expect(pumps[0].npshRequired).toBeUndefined();
  });

  it('has a suction head of air less vapour less lift: 33.9 - 0.6 - 10 ft at sea level', async () => {
    // 33.9 ft of air (NWCG lift table), 0.256 psi or 0.59 ft of vapour at 60 degF (steam tables).
    const { pumps } = await operate([HOSE, { cap: true }], { supply: { draft: { lift: '10 ft' } } });
    expect(Math.abs(pumps[0].npshAvailable / FOOT - (33.94 - 0.59 - 10))).toBeLessThan(0.05);
  });

  it('share what both move in parallel by their curves', async () => {
    const engine = engineOf(A, parabolic(380, 75, 250), { plumbing: { discharge: [FREE_CHECK] } });
    const { pumps, totalFlow } = await operate([HOSE, smooth('1/2 in')], { engine });
    const [a, b] = pumps;
    expect(a.flow + b.flow).toBeCloseTo(totalFlow, 9);
    expect(a.share).toBeCloseTo(a.flow / totalFlow, 9);
    expect(b.share).toBeCloseTo(b.flow / totalFlow, 9);
    expect(b.share).toBeLessThan(0.5);
  });

  it('one past the end of its curve says so', async () => {
    const short = engineOf(parabolic(400, 75, 250, 60));
    const { pumps } = await operate([HOSE, smooth('1/2 in')], { engine: short });
    expect(pumps[0].flow / GPM).toBeGreaterThan(60);
    expect(pumps[0].offCurve).toBe(true);
  });

  it('one shut out says so', async () => {
    const engine = engineOf(A, parabolic(200, 75, 100), { plumbing: { discharge: [FREE_CHECK] } });
    const { pumps } = await operate([HOSE, smooth('3/8 in')], { engine });
    expect(pumps.map(({ state }) => state)).toEqual(['running', 'shut_out']);
  });

  it('one shut out gives nothing and has no share, whatever its cooling line takes', async () => {
    const plumbing = { discharge: [FREE_CHECK], cooling: { orifice: '1/8 in' } };
    const engine = engineOf(A, parabolic(200, 75, 100), { plumbing });
    const { pumps, totalFlow } = await operate([HOSE, smooth('3/8 in')], { engine });
    const [a, b] = pumps;
    expect(b.state).toBe('shut_out');
    expect(b.delivered).toBeCloseTo(0, 9);
    expect(b.share).toBe(0);
    // A sharp edge of 1/8 in passes what its pump makes at that flow: 29.9 x 0.62 x d^2 x sqrt(P).
    expect((b.cooling as number) / GPM).toBeCloseTo(
      orificeFlow(1 / 8, b.dischargePressure / PSI, (0.62 * 29.9) / 29.84),
      2,
    );
    expect(b.flow).toBeCloseTo(b.cooling as number, 9);
    expect(a.state).toBe('running');
    expect(a.share).toBe(1);
    expect(a.delivered).toBeCloseTo(totalFlow, 8);
    expect(a.flow).toBeCloseTo(totalFlow + (a.cooling as number), 8);
  });

  it('with every nozzle shut are dead-headed, not shut out by each other', async () => {
    const plumbing = { discharge: [FREE_CHECK], cooling: { orifice: '1/8 in' } };
    const { pumps } = await operate([HOSE, { cap: true }], { engine: engineOf(A, A, { plumbing }) });
    expect(pumps.map(({ state }) => state)).toEqual(['dead_headed', 'dead_headed']);
    expect(pumps.every(({ cooling = 0 }) => cooling > 0)).toBe(true);
  });
});

describe('what a gauge reads', () => {
  it('in the tee before a sharp orifice is static: total less the velocity head there', async () => {
    const plate = { nozzle: { kind: 'sharp_orifice', bore: '0.716 in', tee_bore: '1.5 in' }, name: 'plate' };
    const { nozzles, lines } = await operate([HOSE, plate]);
    const [{ flow, pressure, reads }] = nozzles;
    expect(reads).toBe('static_in_tee');
    const total = (lines.at(-1)?.outletPressure as number) / PSI;
    expect(pressure / PSI).toBeCloseTo(total - velocityPressure(flow / GPM, 1.5), 3);
    expect(flow / GPM).toBeCloseTo(orificeFlow(0.716, pressure / PSI, (0.62 * 29.9) / 29.84), 2);
  });

  it('is total where no bore is known, and says so', async () => {
    const { points, nozzles } = await operate([HOSE, { gauge: 'behind hose' }, smooth('1/2 in')]);
    expect(points.find(({ name }) => name === 'behind hose')?.reads).toBe('static');
    expect(points.find(({ name }) => name === 'outlet')?.reads).toBe('total');
    expect(nozzles[0].reads).toBe('total');
  });
});

describe('water that runs back', () => {
  const weak = parabolic(200, 75, 100);

  it('through a running pump rests on a guess, which the answer says', async () => {
    const { assumptions, pumps } = await operate([HOSE, smooth('1/8 in')], { engine: engineOf(A, weak) });
    expect(pumps[1].flow).toBeLessThan(0);
    const said = assumptions.find(({ template }) => template.startsWith('Water runs back'));
    expect(said?.source).toContain('no source');
  });

  it('is not spoken of where none does', async () => {
    const engine = engineOf(A, weak, { plumbing: { discharge: [FREE_CHECK] } });
    const { assumptions } = await operate([HOSE, smooth('1/8 in')], { engine });
    expect(assumptions.some(({ template }) => template.startsWith('Water runs back'))).toBe(false);
  });
});

describe('a nozzle opened or shut from outside', () => {
  it('is as it is told, whatever the layout says', async () => {
    const layout = layoutFrom({ engine: engineOf(A), lay: [HOSE, { ...smooth('3/8 in'), state: 'shut' }] });
    const answer = await operateLayout(layout, { nozzleState: () => 'open' });
    expect(answer.nozzles[0].state).toBe('open');
    expect(answer.totalFlow / GPM).toBeCloseTo(
      orificeFlow(3 / 8, answer.nozzles[0].pressure / PSI, 0.995),
      1,
    );
  });
});

describe('a governor that holds a discharge pressure', () => {
  const throttle = { discharge_pressure: '220 psi' };
  const rated = { rated_speed: '6,500 rpm' };

  it('turns the pump as fast as that pressure takes', async () => {
    const engine = engineOf(parabolic(400, 75, 250, 120, rated));
    const { pumps } = await operate([HOSE, smooth('3/8 in')], { engine, throttle });
    const [pump] = pumps;
    expect(pump.dischargePressure / PSI).toBeCloseTo(220, 2);
    const s = (pump.speed as number) / 6500;
    expect(s).toBeLessThan(1);
    expect(s * s * parabola(400, 75, 250, pump.flow / GPM / s)).toBeCloseTo(220, 1);
  });

  it('turns both pumps alike, and holds the higher discharge', async () => {
    const engine = engineOf(parabolic(400, 75, 250, 120, rated), parabolic(300, 75, 150, 100, rated), {
      plumbing: { discharge: [FREE_CHECK] },
    });
    const { pumps } = await operate([HOSE, smooth('3/8 in')], { engine, throttle });
    expect(pumps[0].speed).toBe(pumps[1].speed);
    expect(Math.max(...pumps.map(({ dischargePressure }) => dischargePressure)) / PSI).toBeCloseTo(220, 2);
  });

  it('in series holds the discharge of the second', async () => {
    const engine = engineOf(parabolic(400, 75, 250, 120, rated), parabolic(400, 75, 250, 120, rated));
    const { pumps } = await operate([HOSE, smooth('3/8 in')], { engine, throttle, staging: 'series' });
    expect(pumps[1].dischargePressure / PSI).toBeCloseTo(220, 2);
  });

  it('that cannot reach the pressure runs at full speed', async () => {
    const engine = engineOf(parabolic(400, 75, 250, 120, rated));
    const { pumps } = await operate([HOSE, smooth('3/8 in')], {
      engine,
      throttle: { discharge_pressure: '600 psi' },
    });
    expect(pumps[0].speed).toBeCloseTo(6500, 6);
  });

  it('reads a gauge: the velocity head in the outlet less', async () => {
    const engine = engineOf(parabolic(400, 75, 250, 120, { ...rated, outlet_bore: '1.5 in' }));
    const { pumps, lines } = await operate([HOSE, smooth('3/8 in')], { engine, throttle });
    const total = lines[0].inletPressure / PSI;
    expect(total - velocityPressure(pumps[0].flow / GPM, 1.5)).toBeCloseTo(220, 2);
  });
});
