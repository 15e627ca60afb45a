import { describe, expect, it } from 'vitest';
import { pointPressures, pumpCurveOf } from '../../src/assembly/pump.js';
import { readLayoutText } from '../../src/layout/read-layout.js';
import { REFERENCE_WATER_DENSITY, STANDARD_GRAVITY } from '../../src/physics/constants.js';
import { headAt } from '../../src/physics/pump-curve/curve.js';
import { ENGINE, layoutOf, layProblemsOf, problemsOf } from './support.js';

const pumpWith = (points: string, more = '') => `engine: {pumps: {a: {model: {points: ${points}${more}}}}}`;

describe('a curve in head, as curves are printed', () => {
  const FEET = '[[0 gpm, 960 ft], [30 gpm, 890 ft], [60 gpm, 735 ft], [85 gpm, 530 ft]]';
  const METRES = '[[0 gpm, 292.608 m], [30 gpm, 271.272 m], [60 gpm, 224.028 m], [85 gpm, 161.544 m]]';
  const modelOf = (text: string) => layoutOf(text).engine.pumps.a.model;

  it('is the head that the pump makes, whatever water it was tested with', () => {
    for (const points of [FEET, METRES])
      for (const tested of ['', ', tested_at: {water_temperature: 190 degF}']) {
        const curve = pumpCurveOf(modelOf(pumpWith(points, tested)), 0, new Map());
        expect(headAt(curve, 0)).toBeCloseTo(960 * 0.3048, 9);
      }
  });

  it('is the curve of the pressures of the same column of water', () => {
    const psi = (feet: number) =>
      (feet * 0.3048 * REFERENCE_WATER_DENSITY * STANDARD_GRAVITY) / 6894.757293168361;
    const points = [960, 890, 735, 530].map((feet, i) => `[${[0, 30, 60, 85][i]} gpm, ${psi(feet)} psi]`);
    const asPressure = pumpCurveOf(modelOf(pumpWith(`[${points.join(', ')}]`)), 0, new Map());
    const asHead = pumpCurveOf(modelOf(pumpWith(FEET)), 0, new Map());
    for (const flow of [0, 0.001, 0.003, 0.005])
      expect(headAt(asHead, flow)).toBeCloseTo(headAt(asPressure, flow), 6);
    expect(pointPressures(modelOf(pumpWith(FEET)))[0][1] / 6894.757293168361).toBeCloseTo(psi(960), 9);
  });

  it('is of one kind throughout, and falls', () => {
    expect(problemsOf(pumpWith('[[0 gpm, 960 ft], [30 gpm, 300 psi], [60 gpm, 700 ft]]'))).toEqual([
      expect.stringContaining(
        'one kind is wanted for a whole curve: pressures (psi, kPa, bar) or heads (ft, m)',
      ),
    ]);
    expect(problemsOf(pumpWith('[[0 gpm, 960 ft], [30 gpm, 970 ft], [60 gpm, 980 ft]]'))).toEqual([
      expect.stringContaining('less pressure than at the first point'),
    ]);
    expect(problemsOf(pumpWith('[[0 gpm, 960], [30 gpm, 970 gal], [60 gpm, 980 ft]]')).length).toBe(2);
  });
});

describe('sizes in either spelling', () => {
  const shipped = (text: string) => readLayoutText(text, 'layout.yaml').layout;

  it('name the same part, and the same piece carried', () => {
    const layout = shipped(`engine:
  pumps: {a: {model: demo-highlift}}
  hose_carried: [{hose: forestry-1-1/2, length: 100 ft}]
  fittings_carried: {tip-0.3125: 2, tip-5/16: 1}
lay: [{hose: forestry-1-1/2, length: 100 ft}, {nozzle: tip-0.3125}]`);
    const [hose, nozzle] = layout.lay[0].steps;
    expect(hose).toMatchObject({ id: 'forestry-1.5' });
    expect(nozzle).toMatchObject({ id: 'tip-5/16' });
    expect(layout.engine.hose_carried?.[0].id).toBe('forestry-1.5');
    expect(layout.engine.fittings_carried).toEqual({ 'tip-5/16': 3 });
  });
});

describe('a typing as people say it', () => {
  const typing = (text: string): string => {
    try {
      readLayoutText(`engine: {pumps: {a: {model: demo-highlift}}}\ntyping: ${text}`, 'a.yaml');
      return '';
    } catch (error) {
      return (error as Error).message;
    }
  };

  it('is answered with the class that is meant', () => {
    for (const said of ['Type 3', 'type III', 'Type 3 engine', 'engine type 3', 'engine 3', 'Engine-3'])
      expect(typing(`{scheme: nwcg, class: ${said}}`), said).toContain('did you mean engine-3?');
    expect(typing('{scheme: nwcg, class: Type 1 support}')).toContain('did you mean support-1?');
    expect(typing('{scheme: nwcg, class: Type 9}')).not.toContain('did you mean');
  });

  it('takes a pressure where the class leaves it open, and no other', () => {
    const table = (more: string) => problemsOf(`${ENGINE}\ntyping: {scheme: table, ${more}}`);
    expect(table('class: open, pressure: 200 psi')).toEqual([]);
    expect(table('class: heavy, pressure: 200 psi')).toEqual([
      '2:39 table heavy states its own pressure | leave pressure out; for a pressure of your own write custom: {flow: 150 gpm, pressure: 250 psi}',
    ]);
  });
});

describe('a valve part open', () => {
  it('is refused where it is narrower than its narrowest row, and may be shut', () => {
    expect(layProblemsOf('- {hose: trunk, length: 1 ft}\n- {valve: ball, open: 49 %}')).toEqual([
      expect.stringContaining(
        'nothing is known of this valve open less than 50 % | expected 0 % where it is shut',
      ),
    ]);
    expect(layProblemsOf('- {hose: trunk, length: 1 ft}\n- {valve: ball, open: 50 %}')).toEqual([]);
    expect(layProblemsOf('- {hose: trunk, length: 1 ft}\n- {valve: ball, open: 0 %}')).toEqual([]);
  });
});
