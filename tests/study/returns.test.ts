import { describe, expect, test } from 'vitest';
import { operateLayout } from '../../src/study/operation.js';
import { checkLayout } from '../../src/study/rating.js';
import { type Document, engineOf, FREE_CHECK, layoutFrom, parabolic } from '../support/layouts.js';
import { GPM } from '../support/units.js';

const PUMP = parabolic(400, 75, 250);
const rig = (cooling: Document, relief?: Document): Document => ({
  engine: engineOf(PUMP, PUMP, { plumbing: { discharge: [FREE_CHECK], cooling }, relief }),
  lay: [{ nozzle: { kind: 'smooth_bore', bore: '0.25 in' }, name: 'tip' }],
});
const flowing = (document: Document) => operateLayout(layoutFrom(document));

describe('what runs back to the tank', () => {
  test('by an open relief valve and by cooling lines that no pump has of its own is named, and all of it', async () => {
    const answer = await flowing(rig({ orifice: '1/8 in', at: 'discharge' }, { opens_at: '300 psi' }));
    expect(answer.returns.map(({ name }) => name).sort()).toEqual([
      'cooling line a',
      'cooling line b',
      'relief valve',
    ]);
    const back = answer.returns.reduce((sum, { flow }) => sum + flow, 0);
    const given = answer.pumps.reduce((sum, { delivered }) => sum + delivered, 0);
    expect(given - back).toBeCloseTo(answer.totalFlow, 7);
  });

  test('by a line of a pump itself stands with the pump, and a shut relief valve is not named', async () => {
    const answer = await flowing(rig({ orifice: '1/8 in' }, { opens_at: '500 psi' }));
    expect(answer.returns).toEqual([]);
    expect(answer.pumps.every(({ cooling }) => (cooling ?? 0) > 0)).toBe(true);
  });

  test('at the required flow of a check is what the shared line takes of the rating', async () => {
    const typing = { custom: { flow: '100 gpm', pressure: '200 psi' } };
    const checked = (cooling: Document) => checkLayout(layoutFrom({ ...rig(cooling), lay: [], typing }));
    const { pumps, returns } = await checked({ orifice: '1/8 in', at: 'manifold' });
    expect(returns.map(({ name }) => name)).toEqual(['cooling line of both pumps']);
    const given = pumps.reduce((sum, { delivered }) => sum + delivered, 0);
    expect(given - returns[0].flow).toBeCloseTo(100 * GPM, 7);
  });
});
