import { describe, expect, test } from 'vitest';
import { colebrook, swameeJain } from '../../src/physics/friction-factor.js';
import { expectPrinted } from '../published/hydraulic-units.js';

const TABLE = 'Colebrook and Swamee-Jain by their published formulae, worked out apart from this program';
const ROWS: [number, number, string, string][] = [
  [1e4, 0, '0.03088', '0.03097'],
  [1e5, 0, '0.01799', '0.01786'],
  [1e6, 0, '0.01165', '0.01161'],
  [1e4, 1e-3, '0.03238', '0.03267'],
  [1e5, 1e-3, '0.02217', '0.02234'],
  [1e6, 1e-3, '0.01994', '0.02003'],
  [1e6, 1e-4, '0.01344', '0.01351'],
  [1e5, 1e-2, '0.03850', '0.03875'],
];

describe(TABLE, () => {
  for (const [reynolds, roughness, byColebrook, bySwameeJain] of ROWS) {
    test(`${TABLE}: Re ${reynolds}, roughness ${roughness}: ${byColebrook} and ${bySwameeJain}`, () => {
      expectPrinted(colebrook(reynolds, roughness), byColebrook);
      expectPrinted(swameeJain(reynolds, roughness), bySwameeJain);
    });
  }

  test('Blasius, 0.316 / Re^0.25: 0.0316 at Re 1e4 lies within 3 % of Colebrook in a smooth pipe', () => {
    expect(Math.abs(colebrook(1e4, 0) / 0.03164 - 1)).toBeLessThan(0.03);
  });
});
