import { expect, test } from 'vitest';
import { USUAL_BOUNDS } from '../../src/quantity/bounds.js';
import { layoutOf } from '../study/support.js';

const engine = (more = '', pump = '') => `engine:
  name: engine of the tests
  tank: {capacity: 500 gal}
  pumps: {a: {model: {points: [[0 gpm, 400 psi], [50 gpm, 350 psi], [100 gpm, 200 psi]]${pump}}}}
  outlets: {left: []}
  ${more}
`;
const lay = (step: string) => `lay:\n  left:\n    - ${step}\n    - {nozzle: tip-3/8}\n`;

/** What ended in a fault of the program's own, or in a figure that no water has. */
const REFUSED: [string, string, RegExp][] = [
  [
    'tank of 1,500 ft',
    engine().replace('500 gal', '500 gal, outlet_height: 1500 ft'),
    /too large: at most 98.4252 ft/,
  ],
  ['tank of 1e308', engine().replace('500 gal', '1e308 gal'), /too large/],
  [
    'elbow in a pipe of 0.364 in',
    engine() +
      lay(
        '{pipe: {inside_diameter: 0.364 in, roughness: 0.00001 in}, length: 2 ft, fittings: {elbow_90: 1}}',
      ),
    /known for bores from 0.394 in/,
  ],
  [
    'hose of 40 in',
    engine() + lay('{hose: {inside_diameter: 40 in, coefficient: 1}, length: 50 ft}'),
    /too large: at most 39.3701 in/,
  ],
  [
    'wall of 0.1 in in 1.5 in',
    engine() + lay('{hose: {inside_diameter: 1.5 in, roughness: 0.1 in}, length: 50 ft}'),
    /too rough for its bore/,
  ],
  [
    'curve measured in ice',
    engine('', ', tested_at: {water_temperature: 20 degF}'),
    /too small: at least 32 degF/,
  ],
  ['curve measured at 200,000 ft', engine('', ', tested_at: {elevation: 200000 ft}'), /too large/],
  ['air of -55 degC', `site: {air_temperature: -55 degC}\n${engine()}`, /too small: at least -50 degC/],
  [
    'casing limit of 5e-324',
    engine('', ', limits: {casing: 5e-324 psi}'),
    /too small|more than zero|no quantity/,
  ],
  [
    'shuttle of no time',
    `${engine()}shuttle: {tenders: 1, tank: 1000 gal, fill: 0 min, dump: 0 min, distance: 0 mi}\n`,
    /more than zero/,
  ],
  [
    'automatic nozzle at 1e-12 psi',
    `${engine()}lay:\n  left:\n    - {nozzle: {kind: automatic, pressure: 1e-12 psi, flow_from: 10 gpm, flow_to: 60 gpm}}\n`,
    /too small|no quantity/,
  ],
  ['pump of 14,406 psi', engine().replace('400 psi', '14406 psi'), /too large/],
  [
    'curve of a thousand points',
    engine().replace(
      '[0 gpm, 400 psi], ',
      Array.from({ length: 1000 }, (_, i) => `[${i / 100} gpm, ${400 - i / 1000} psi], `).join(''),
    ),
    /at most 200 points/,
  ],
];

for (const [what, text, words] of REFUSED) {
  test(`a ${what} is refused where it stands`, () => {
    expect(() => layoutOf(text)).toThrow(words);
    expect(() => layoutOf(text)).toThrow(/tests.yaml:\d+:\d+/);
  });
}

test('no kind of quantity is without ends', () => {
  for (const { lowest, highest, least } of Object.values(USUAL_BOUNDS)) {
    expect(Number.isFinite(lowest) && Number.isFinite(highest)).toBe(true);
    expect(least).toBeGreaterThan(0);
    expect(highest).toBeGreaterThan(least);
  }
});
