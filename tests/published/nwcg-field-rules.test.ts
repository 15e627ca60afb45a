import { describe, expect, test } from 'vitest';
import { readLayoutText } from '../../src/layout/read-layout.js';
import { FOOT, GALLON_PER_MINUTE, PSI, US_GALLON } from '../../src/physics/customary.js';
import { operateLayout } from '../../src/study/operation.js';
import { expectPrinted } from './hydraulic-units.js';

/** A lay fed at 200 psi by a relay, its one pump so strong and flat that what it adds does not matter here. */
const lay = (steps: string, policy = 'wildland') => `
appliance_policy: ${policy}
engine:
  tank: {capacity: 500 gal}
  pumps: {a: {model: {points: [[0 gpm, 200 psi], [100 gpm, 199 psi], [2000 gpm, 150 psi]]}}}
staging: a
lay:
${steps}
`;

const flowIn = async (text: string) => operateLayout(readLayoutText(text, 'lay.yaml').layout);

const FIELD = 'NWCG Firefighter Math 3.4';
describe(FIELD, () => {
  test(`${FIELD}: five wye valves cost 25 psi`, async () => {
    const wyes = Array.from({ length: 5 }, () => '  - appliance: wye').join('\n');
    const { lines } = await flowIn(lay(`${wyes}\n  - nozzle: {kind: fog, flow: 30 gpm, pressure: 100 psi}`));
    const lost = lines.reduce((sum, line) => sum + line.loss, 0) / PSI;
    expect(lines).toHaveLength(5);
    expectPrinted(lost, '25');
  });

  test(`${FIELD}: an appliance costs nothing where no water flows`, async () => {
    const { lines } = await flowIn(lay('  - appliance: wye\n  - cap: true'));
    expect(lines.every((line) => Math.abs(line.loss) < 1)).toBe(true);
  });
});

const VOLUME = 'NWCG Firefighter Math 3.1';
describe(VOLUME, () => {
  test(`${VOLUME}: a tank of 5 x 6 x 8 ft holds 1,795 gal`, () => {
    expectPrinted((5 * 6 * 8 * FOOT ** 3) / US_GALLON, '1795');
  });

  test(`${VOLUME}: a tank of 34 in x 5 ft x 12 ft holds 1,272 gal`, () => {
    expectPrinted(((34 / 12) * 5 * 12 * FOOT ** 3) / US_GALLON, '1272');
  });
});

const SLIDES = 'City of Rohnert Park fire training slides 3-8, Friction Loss in Hose Lays';
test(`${SLIDES}: 200 ft of 2-1/2 in at 300 gpm into a wye of two 150 ft lines of 1-3/4 in (C 10) loses 70 psi`, async () => {
  // Two nozzles that pass 150 gpm at 100 psi: the pump then stands 70 psi over them, as the slide adds it up.
  const line = (name: string) =>
    `{name: ${name}, steps: [{hose: {inside_diameter: 1.75 in, coefficient: 10}, length: 150 ft}, {nozzle: {kind: fog, flow: 150 gpm, pressure: 100 psi}}]}`;
  const text = lay(
    `  - {hose: {inside_diameter: 2.5 in, coefficient: 2}, length: 200 ft}\n  - {branch: wye, to: [${line('left')}, ${line('right')}]}`,
    'engineering',
  );
  const { nozzles, pumps } = await flowIn(text);
  const [left, right] = nozzles;
  expect(left.flow).toBeCloseTo(right.flow, 9);
  // Every loss of this lay goes with the square of the flow, so that it can be read at the slide's own flow.
  const lost = (pumps[0].headRise - left.pressure) * ((150 * GALLON_PER_MINUTE) / left.flow) ** 2;
  expectPrinted(lost / PSI, '70');
});
