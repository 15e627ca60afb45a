import { expect, test } from 'vitest';
import { readLayoutText } from '../../src/layout/read-layout.js';
import { PSI } from '../../src/physics/customary.js';
import { requireOf } from '../../src/study/require.js';
import { expectPrinted } from './hydraulic-units.js';

const structural = async (steps: string) => {
  const text = `
engine:
  pumps: {a: {model: {points: [[0 gpm, 600 psi], [100 gpm, 590 psi], [800 gpm, 300 psi]]}}}
supply: {relay: {pressure: 50 psi}}
lay:
${steps}
`;
  const { rules } = await requireOf(readLayoutText(text, 'lay.yaml').layout);
  return rules.find((one) => one.rules === 'structural') as (typeof rules)[number];
};

const SLIDES = 'City of Rohnert Park fire training slides 3-8, Friction Loss in Hose Lays';
test(`${SLIDES}: a wye of two lines counts one of them, 36 + 34 = 70 psi`, async () => {
  const line = (name: string) =>
    `{name: ${name}, steps: [{hose: {inside_diameter: 1.75 in, coefficient: 10}, length: 150 ft}, {nozzle: {kind: fog, flow: 150 gpm, pressure: 100 psi}}]}`;
  const rule = await structural(
    `  - {hose: {inside_diameter: 2.5 in, coefficient: 2}, length: 200 ft}\n  - {branch: gated-wye, to: [${line('left')}, ${line('right')}]}`,
  );
  expect(rule.appliances).toBe(0);
  // The slide rounds the line's 33.75 to 34 before it adds.
  expectPrinted(rule.friction / PSI, '70');
});

// The answer of 80 psi is the card's; that it is 10 for the appliance and 5 for each of five floors is inferred from it.
const CARD = 'IFSTA fireground calculation cards, standpipe question';
test(`${CARD}: 45 psi of friction at 350 gpm, one appliance, nozzle on the sixth floor: 80 psi in all`, async () => {
  const feet = 45 / ((2 * 3.5 ** 2) / 100);
  const rule = await structural(
    `  - {hose: {inside_diameter: 2.5 in, coefficient: 2}, length: ${feet} ft, rise: 50 ft}\n  - {appliance: wye}\n  - {nozzle: {kind: fog, flow: 350 gpm, pressure: 100 psi}}`,
  );
  expectPrinted(rule.friction / PSI, '45');
  expectPrinted((rule.friction + rule.appliances + rule.height) / PSI, '80');
});

test('IFSTA fireground calculation cards: no allowance for an appliance under 350 gpm', async () => {
  const rule = await structural(
    '  - {hose: {inside_diameter: 2.5 in, coefficient: 2}, length: 100 ft}\n  - {appliance: wye}\n  - {nozzle: {kind: fog, flow: 349 gpm, pressure: 100 psi}}',
  );
  expect(rule.appliances).toBe(0);
});
