import { USUAL_BOUNDS } from '../../src/quantity/bounds.js';
import { type Dimension, SI_UNITS } from '../../src/quantity/dimension.js';
import { findUnit, UNITS } from '../../src/quantity/units.js';
import type { Random } from '../support/random.js';

export type Document = Record<string, unknown>;

/** A place in a document: what holds it, and under which key. */
interface Place {
  holder: Document | unknown[];
  key: string | number;
  value: unknown;
}

function placesOf(node: unknown, found: Place[] = []): Place[] {
  if (Array.isArray(node)) {
    node.forEach((value, key) => {
      found.push({ holder: node, key, value });
      placesOf(value, found);
    });
  } else if (typeof node === 'object' && node !== null) {
    for (const [key, value] of Object.entries(node)) {
      found.push({ holder: node as Document, key, value });
      placesOf(value, found);
    }
  }
  return found;
}

function put({ holder, key }: Place, value: unknown): void {
  (holder as Document)[key] = value;
}

interface Given {
  number: number;
  unit: string;
  dimension: Dimension;
}

function quantityIn(value: unknown): Given | undefined {
  const found = typeof value === 'string' ? /^\s*(-?[\d.,]+)\s+(.+?)\s*$/.exec(value) : null;
  const unit = found && findUnit(found[2]);
  if (!found || !unit) return undefined;
  return { number: Number(found[1].replaceAll(',', '')), unit, dimension: UNITS[unit].dimension };
}

const NAMES = [
  '{n}',
  '{value}',
  'a {b} {{c}}',
  '__proto__',
  'constructor',
  'néz 中',
  '%s %d',
  'x'.repeat(120),
  '$&',
];
const SIZES = ['1 mm', '9 mm', '10 mm', '0.364 in', '1 in', '2.5 in', '1 m', '40 in', '5 mm'];
const ROUGH = ['0 in', '0.00001 in', '0.1 in', '1 in', '0.0018 in', '50 mm'];
const NUMBERS = [0, -1, 1, 2, 1e-9, 0.5, 10, 1e5, 1e9, 1e308, 5e-324, 1.5];

/** A figure off by a slip of the pen, or at the end of what may stand there. */
function slipped(random: Random, { number, unit, dimension }: Given): string {
  const { lowest, highest, least } = USUAL_BOUNDS[dimension];
  const kind = random.integer(0, 9);
  if (kind < 5) return `${number * random.pick([0.1, 0.5, 0.9, 1.1, 2, 3, 10])} ${unit}`;
  if (kind < 7) return `${random.pick([lowest, highest, least])} ${SI_UNITS[dimension]}`;
  if (kind < 8) return `${number * random.pick([0, -1, 1e-6, 100, 1e4])} ${unit}`;
  return kind < 9
    ? `${random.pick(NUMBERS)} ${unit}`
    : `${number} ${random.pick(['psi', 'ft', 'gpm', 'degF'])}`;
}

/** One thing in the document made otherwise. */
export function mutate(random: Random, document: Document): void {
  const places = placesOf(document);
  if (places.length === 0) return;
  const quantities = places.filter(({ value }) => quantityIn(value) !== undefined);
  const kind = random.integer(0, 19);
  if (kind < 11 && quantities.length > 0) {
    const place = random.pick(quantities);
    if (/diameter|bore|orifice|tip/.test(String(place.key)) && random.chance(0.6))
      put(place, random.pick(SIZES));
    else if (place.key === 'roughness' && random.chance(0.6)) put(place, random.pick(ROUGH));
    else put(place, slipped(random, quantityIn(place.value) as Given));
    return;
  }
  const place = random.pick(places);
  if (kind < 13) rename(random, places);
  else if (kind < 14) put(place, random.pick([null, '', [], {}, 'nonsense', 7, true]));
  else if (kind < 15) delete (place.holder as Document)[place.key];
  else if (kind < 17) {
    const numbers = places.filter(({ value }) => typeof value === 'number');
    if (numbers.length > 0) put(random.pick(numbers), random.pick(NUMBERS));
  } else if (Array.isArray(place.value) && place.value.length > 0) {
    const list = place.value;
    const from = random.integer(0, list.length - 1);
    if (random.chance(0.5)) list.splice(from, 0, structuredClone(list[from]));
    else list.splice(random.integer(0, list.length - 1), 0, ...list.splice(from, 1));
  } else add(random, document);
}

function rename(random: Random, places: readonly Place[]): void {
  const named = places.filter(
    ({ key, value }) => typeof value === 'string' && (key === 'name' || key === 'title' || key === 'gauge'),
  );
  if (named.length > 0) put(random.pick(named), random.pick(NAMES));
}

/** What many layouts do not have: a lay that grows, a shuttle, a slope, where a curve was measured. */
function add(random: Random, document: Document): void {
  const some = (low: number, high: number, unit: string) =>
    `${Number(random.between(low, high).toPrecision(3))} ${unit}`;
  const additions: (() => void)[] = [
    () => {
      document.progressive = {
        trunk: {
          hose: random.pick(['forestry-1.5', 'forestry-1', 'attack-1.75']),
          length: some(20, 400, 'ft'),
          rise: some(-60, 90, 'ft'),
        },
        sections: random.integer(1, 14),
        lateral: {
          every: random.integer(1, 3),
          branch: random.pick(['gated-wye', 'tee']),
          steps: [
            { hose: 'forestry-1', length: some(20, 300, 'ft') },
            { nozzle: random.pick(['fog-20', 'fog-low-10', 'tip-1/4']) },
          ],
          flowing: random.pick(['all', 'none', { last: 2 }]),
        },
        end: [{ nozzle: random.pick(['tip-3/8', 'tip-1/4', 'fog-20']) }],
        pace: some(1, 20, 'min'),
      };
    },
    () => {
      document.shuttle = {
        tenders: random.integer(1, 6),
        tank: some(200, 4000, 'gal'),
        fill: random.pick([some(1, 20, 'min'), '0 min']),
        dump: some(0.1, 10, 'min'),
        distance: random.pick(['0 mi', some(0, 20, 'mi')]),
        speed: some(2, 60, 'mph'),
        first_in: some(0, 60, 'min'),
      };
    },
    () => {
      document.terrain = random.pick([
        `${random.integer(-60, 90)} %`,
        {
          on_map: [
            ['0 ft', '0 ft'],
            [some(100, 900, 'ft'), some(-200, 300, 'ft')],
          ],
        },
        [
          ['0 ft', '0 ft'],
          [some(300, 900, 'ft'), some(-100, 200, 'ft')],
        ],
      ]);
    },
    () => {
      document.site = {
        elevation: some(-400, 22_000, 'ft'),
        air_temperature: some(-60, 150, 'degF'),
        water_temperature: some(30, 214, 'degF'),
        derating: random.pick(['agricultural', 'sae_j1349', 'none']),
      };
    },
    () => {
      const pumps = (document.engine as Document | undefined)?.pumps as Record<string, Document> | undefined;
      const model = pumps?.a?.model as Document | undefined;
      if (typeof model === 'object' && model !== null)
        model.tested_at = {
          elevation: some(-1000, 25_000, 'ft'),
          air_temperature: some(-70, 150, 'degF'),
          water_temperature: some(20, 220, 'degF'),
        };
    },
  ];
  random.pick(additions)();
}
