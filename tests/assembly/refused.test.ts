import { describe, expect, it } from 'vitest';
import { LayoutProblems } from '../../src/layout/problem.js';
import { type Document, engineOf, layoutFrom, parabolic, solve } from '../support/layouts.js';

const A = parabolic(400, 75, 250);
const HOSE = { hose: { inside_diameter: '1.5 in', coefficient: 24 }, length: '50 ft' };
const TIP = { nozzle: { kind: 'smooth_bore', bore: '1/4 in' } };

function problemsOf(document: Document): string[] {
  try {
    layoutFrom({ engine: engineOf(A, A), ...document });
  } catch (error) {
    if (!(error instanceof LayoutProblems)) throw error;
    return error.problems.map(({ message }) => message);
  }
  return [];
}

describe('what cannot be worked out is refused as it is read', () => {
  it('an open end whose bore is nowhere stated: at an outlet, and where lines meet', () => {
    expect(problemsOf({ lay: [{ open_end: true }] })).toEqual([expect.stringContaining('open end')]);
    const joined = [{ siamese: [[HOSE], [HOSE]] }, { open_end: true }];
    expect(problemsOf({ lay: joined })).toEqual([expect.stringContaining('open end')]);
    expect(problemsOf({ lay: [HOSE, { open_end: true }] })).toEqual([]);
  });

  it('a strainer that loses velocity heads in a bore that is nowhere stated', () => {
    const draft = (more: Document) => problemsOf({ supply: { draft: { lift: '10 ft', ...more } } });
    expect(draft({ strainer: { k: 2 } })).toEqual([expect.stringContaining('bore')]);
    expect(draft({ strainer: { k: 2, inside_diameter: '3 in' } })).toEqual([]);
    expect(draft({ strainer: { k: 2 }, suction: [HOSE] })).toEqual([]);
  });

  it('an outlet of a pump that works apart does not have the bore of a manifold that it does not pass', () => {
    const plumbing = { manifold: [{ pipe: 'stainless-10s-2', length: '1 ft' }] };
    const outlets = { left: { pump: 'a', steps: [{ appliance: { k: 3 } }] }, right: { pump: 'b' } };
    const engine = engineOf(A, A, { plumbing, outlets });
    expect(problemsOf({ engine, staging: 'separate' })).toEqual([expect.stringContaining('bore')]);
    expect(problemsOf({ engine, staging: 'parallel' })).toEqual([]);
  });

  it('a valve part open of which only the loss wide open is known', () => {
    const lay = (open: string) => [HOSE, { valve: { k: 0.2 }, open }, TIP];
    expect(problemsOf({ lay: lay('50 %') })).toEqual([expect.stringContaining('part open')]);
    expect(problemsOf({ lay: lay('100 %') })).toEqual([]);
    expect(problemsOf({ lay: lay('0 %') })).toEqual([]);
    expect(problemsOf({ lay: [HOSE, { valve: 'angle', open: '50 %' }, TIP] })).toHaveLength(1);
  });
});

describe('what has no steady answer is refused by name', () => {
  it('a draw beyond a shut valve', async () => {
    const valve = { valve: { k: 0.2, inside_diameter: '2 in' }, open: '0 %', name: 'main valve' };
    const layout = layoutFrom({
      engine: engineOf(A, A, { plumbing: { manifold: [valve] } }),
      typing: { custom: { flow: '60 gpm', pressure: '100 psi' } },
    });
    const { checkLayout } = await import('../../src/study/rating.js');
    await expect(checkLayout(layout)).rejects.toMatchObject({
      name: 'NoSteadyAnswer',
      where: ['main valve'],
    });
  });

  it('and never a layout that only stands still', async () => {
    for (const staging of ['parallel', 'series', 'series_reversed', 'a', 'b'] as const) {
      const { point } = await solve({ engine: engineOf(A, A), staging, lay: [HOSE, { cap: true }] });
      expect(point.solution.status).toBe('solved');
    }
  });
});
