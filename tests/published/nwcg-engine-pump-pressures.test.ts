import { describe, expect, test } from 'vitest';
import { readLayoutText } from '../../src/layout/read-layout.js';
import { FOOT, PSI } from '../../src/physics/customary.js';
import { requireOf } from '../../src/study/require.js';
import { expectPrinted } from './hydraulic-units.js';

const lay = (steps: string) => `
engine:
  pumps: {a: {model: {points: [[0 gpm, 600 psi], [100 gpm, 590 psi], [800 gpm, 300 psi]]}}}
supply: {relay: {pressure: 50 psi}}
lay:
${steps}
`;

const byRule = async (steps: string, rules: 'wildland' | 'engineering') => {
  const answer = await requireOf(readLayoutText(lay(steps), 'lay.yaml').layout);
  const rule = answer.rules.find((one) => one.rules === rules);
  if (!rule) throw new Error(`no ${rules} rule`);
  return rule;
};

const TITLE = 'NWCG Firefighter Math 3.4, calculating engine pump pressures';

describe(TITLE, () => {
  test(`${TITLE}: five wye valves cost 25 psi`, async () => {
    const wyes = Array.from({ length: 5 }, () => '  - {appliance: wye}').join('\n');
    const rule = await byRule(
      `${wyes}\n  - {nozzle: {kind: fog, flow: 30 gpm, pressure: 100 psi}}`,
      'wildland',
    );
    expect(rule.applianceCount).toBe(5);
    expectPrinted(rule.appliances / PSI, '25');
  });

  test(`${TITLE}: half a psi for each foot in the field, 0.434 exactly`, async () => {
    const hill =
      '  - {hose: {inside_diameter: 1.5 in, coefficient: 24}, length: 300 ft, rise: 100 ft}\n  - {nozzle: {kind: fog, flow: 30 gpm, pressure: 100 psi}}';
    const field = await byRule(hill, 'wildland');
    expect(field.climb / FOOT).toBeCloseTo(100, 9);
    expectPrinted(field.height / PSI, '50');
    expectPrinted((await byRule(hill, 'engineering')).height / PSI, '43.4');
  });

  test(`${TITLE}: engine pressure is nozzle pressure and head loss or less head gain, and friction`, async () => {
    const down = (rise: number) =>
      byRule(
        `  - {hose: {inside_diameter: 1.5 in, coefficient: 24}, length: 300 ft, rise: ${rise} ft}\n  - {nozzle: {kind: fog, flow: 30 gpm, pressure: 100 psi}}`,
        'wildland',
      );
    const friction = 24 * 0.3 ** 2 * 3;
    expectPrinted((await down(100)).pressure / PSI, String(Math.round(100 + 50 + friction)));
    expectPrinted((await down(-100)).pressure / PSI, String(Math.round(100 - 50 + friction)));
  });
});
