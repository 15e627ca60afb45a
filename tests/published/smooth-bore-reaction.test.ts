import { expect, test } from 'vitest';
import { smoothBoreReaction } from '../../src/physics/nozzle/reaction.js';
import { expectPrinted, inches, psi } from './hydraulic-units.js';

test('Flash-card deck Formulas, card set 26489: smooth-bore reaction 1.57 d2 NP is about a third of the flow at 50 psi', () => {
  // 1 in at 50 psi: 78.5 lbf, and 210 gpm / 3 = 70: the cards' "about" is 12 %.
  const pounds = smoothBoreReaction(inches(1), psi(50)) / 4.4482216;
  expectPrinted(pounds, '78.5');
  expect(Math.abs(pounds / (210 / 3) - 1)).toBeLessThan(0.13);
});
