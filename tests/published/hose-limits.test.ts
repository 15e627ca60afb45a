// What hose bears, by the document that prints each figure; hose without a row here has no published limit that was seen.
import { describe, expect, it } from 'vitest';
import { loadCatalogue } from '../../src/catalogue/load.js';
import { toUnit } from '../../src/quantity/units.js';

type Limits = { working?: number; service_test?: number; proof?: number; burst?: number };

const PSI: [citation: string, ids: string[], limits: Limits][] = [
  [
    'USDA Forest Service T&D 0251-1307 (2002), hardline of Specification 5100-185: 600 psi at work, 2,400 burst; NFPA 1962: tested at 110 %',
    ['booster-0.75'],
    { working: 600, service_test: 660, burst: 2400 },
  ],
  [
    'NWCG PMS 448, NFES 1239: 300 psi for 3 min; USDA Forest Service T&D 0251-1307 (2002): 900 psi burst',
    ['forestry-1'],
    { service_test: 300, burst: 900 },
  ],
  [
    'Connecticut forestry hose purchase specification, 2025, and NWCG PMS 448, NFES 000967: 300, 600 and 1,000 psi',
    ['forestry-1.5', 'forestry-1.5-acceptance'],
    { service_test: 300, proof: 600, burst: 1000 },
  ],
  [
    'NFPA 1962 (2018): forestry hose at least 300 psi',
    ['forestry-1-unlined', 'forestry-1.5-unlined'],
    { service_test: 300 },
  ],
  [
    'NWCG PMS 447-1 (2003), hose page: double jacket at work 400 psi',
    ['double-jacket-1.5', 'double-jacket-2.5'],
    { working: 400 },
  ],
  [
    'NFPA 1962 (2013, 2018): attack hose at least 300 psi',
    [
      'attack-1.25',
      'attack-1.5',
      'attack-1.75',
      'attack-1.75-county',
      'attack-1.75-city',
      'attack-1.75-measured',
      'attack-1.75-low',
      'attack-1.75-high',
      'attack-2',
      'attack-2-county',
      'attack-2.5',
    ],
    { service_test: 300 },
  ],
  [
    'NFPA 1962 (2013, 2018): supply hose at least 200 psi',
    [
      'supply-2.5',
      'supply-3',
      'supply-3-couplings-3',
      'supply-3-condensed',
      'supply-3.5',
      'supply-3.5-condensed',
      'supply-4',
      'supply-4.5',
      'supply-5',
      'supply-5-condensed',
      'supply-6',
    ],
    { service_test: 200 },
  ],
];
const BAR: [citation: string, ids: string[], limits: Limits][] = [
  [
    'Löschwasserförderung über lange Wegstrecken, dewiki.de: B, C and D hose is tested at 16 bar',
    ['b-75', 'c-52', 'c-42'],
    { service_test: 16 },
  ],
];

const catalogue = loadCatalogue();

function limitsOf(id: string, unit: 'psi' | 'bar'): Limits {
  const { limits = {} } = catalogue.find('hose', id) ?? {};
  return Object.fromEntries(
    Object.entries(limits).map(([name, value]) => [name, Number(toUnit(value as number, unit).toFixed(6))]),
  );
}

describe('what hose bears', () => {
  const ids = catalogue.ids('hose');
  for (const [rows, unit] of [
    [PSI, 'psi'],
    [BAR, 'bar'],
  ] as const)
    for (const [citation, hoses, limits] of rows)
      it(citation, () => {
        for (const id of hoses.filter((one) => ids.includes(one)))
          expect(limitsOf(id, unit), id).toEqual(limits);
      });

  it('no other hose of the catalogue states a limit that no document here prints', () => {
    const held = new Set([...PSI, ...BAR].flatMap(([, hoses]) => hoses));
    const stating = ids.filter((id) => catalogue.find('hose', id)?.limits !== undefined);
    expect(stating.filter((id) => !held.has(id))).toEqual([]);
  });
});
