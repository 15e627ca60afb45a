import { expect, test } from 'vitest';
import { makeSheet } from '../../src/drill/generate.js';
import { loadRuleSet } from '../../src/drill/rules/load.js';
import { layoutOf } from '../study/support.js';

test('of a pump whose curve was measured from 20 gpm up, no less flow is asked', async () => {
  const pump = '{model: {points: [[20 gpm, 390 psi], [50 gpm, 350 psi], [100 gpm, 200 psi]]}}';
  const layout = layoutOf(`engine:
  name: engine of the tests
  tank: {capacity: 500 gal}
  pumps: {a: ${pump}, b: ${pump}}
  outlets: {left: []}
`);
  const rules = await loadRuleSet('wildland');
  for (const [topic, level] of [
    ['own-curve', 1],
    ['own-series', 2],
  ] as const) {
    for (let seed = 1; seed <= 20; seed++) {
      const request = {
        topics: [topic],
        level,
        count: 3,
        seed,
        rules,
        units: 'us' as const,
        choices: 0,
      };
      expect(makeSheet({ ...request, layout }).problems).toHaveLength(3);
    }
  }
});
