import { fromUnit } from '../quantity/format.js';
import { parseQuantity } from '../quantity/parse.js';
import type { GivenQuantity, Sweep, SweptQuantity } from '../study/answer.js';
import { UsageFault } from './usage-fault.js';

interface Swept {
  dimension: 'length' | 'temperature' | 'ratio';
  atLeast: number;
  atMost: number;
  bounds: string;
}

/** The bounds of a layout's own site, and of a derating rule at the top. */
const SWEPT: Record<SweptQuantity, Swept> = {
  elevation: { dimension: 'length', atLeast: -500, atMost: 6000, bounds: '-500 m to 6,000 m' },
  air_temperature: {
    dimension: 'temperature',
    atLeast: fromUnit(-60, 'degC'),
    atMost: fromUnit(60, 'degC'),
    bounds: '-60 degC to 60 degC',
  },
  water_temperature: {
    dimension: 'temperature',
    atLeast: fromUnit(0, 'degC'),
    atMost: fromUnit(100, 'degC'),
    bounds: '0 degC to 100 degC',
  },
  wear: { dimension: 'ratio', atLeast: 0, atMost: 0.9, bounds: '0 % to 90 %' },
  tank_level: { dimension: 'ratio', atLeast: 0, atMost: 1, bounds: '0 % to 100 %' },
};

/** What a sweep may be headed with; places and temperatures of the air need no word. */
const WORDS: Record<string, SweptQuantity> = {
  elevation: 'elevation',
  air: 'air_temperature',
  water: 'water_temperature',
  wear: 'wear',
  tank: 'tank_level',
};

const MOST_VALUES = 100;
const CROSSED = '"0 ft, 8000 ft; 60 degF, 100 degF; wear 0 %, 5 %"';
const EXAMPLE =
  '"0 ft, 5000 ft", "70 degF, 100 degF", "wear 0 %, 5 %", "tank 100 %, 20 %" or "water 60 degF, 90 degF"';

/** A comma that sets off thousands stands between a digit and three more. */
const COMMA = /(?<!\d)\s*,|,(?!\d{3}(?!\d))/;

/**
 * One `--across`: a list, or several set off by semicolons, which are crossed: the first runs along each table, and there is
 * a table for every choice of the others.
 */
export function readSweeps(text: string): Sweep[] {
  const [along, ...others] = text.split(';').map(readSweep);
  const named = new Set([along, ...others].map(({ of }) => of));
  if (named.size <= others.length)
    throw new UsageFault(`--across ${text}: the same is crossed with itself; write ${CROSSED}`);
  const tables = others.reduce<GivenQuantity[][]>(
    (given, { of, values }) => given.flatMap((held) => values.map((value) => [...held, { of, value }])),
    [[]],
  );
  const all = tables.length * along.values.length;
  if (all > MOST_VALUES)
    throw new UsageFault(`--across has ${all} values, crossed; ${MOST_VALUES} are the most`);
  return tables.map((given) => ({ ...along, ...(given.length > 0 && { given }) }));
}

/** One list: a word where it needs one, then values with their units. */
export function readSweep(text: string): Sweep {
  const [, word = '', list] = /^\s*([a-z]+(?=\s))?\s*(.*)$/is.exec(text) ?? [];
  if (word && !Object.hasOwn(WORDS, word.toLowerCase()))
    throw new UsageFault(`--across ${text}: ${word} is nothing to go across; write ${EXAMPLE}`);
  const parts = list
    .split(COMMA)
    .map((part) => part.trim())
    .filter(Boolean);
  if (parts.length === 0) throw new UsageFault(`--across ${text}: no value is given; write ${EXAMPLE}`);
  if (parts.length > MOST_VALUES)
    throw new UsageFault(`--across has ${parts.length} values; ${MOST_VALUES} are the most`);
  const of = word ? WORDS[word.toLowerCase()] : meantBy(parts[0]);
  return { of, values: parts.map((part) => readValue(part, of)) };
}

/** Without a word, a length is a place and a temperature the air's. */
function meantBy(part: string): SweptQuantity {
  if ('value' in parseQuantity(part, 'length')) return 'elevation';
  if ('value' in parseQuantity(part, 'temperature')) return 'air_temperature';
  if ('value' in parseQuantity(part, 'ratio'))
    throw new UsageFault(`--across ${part}: of what? write ${EXAMPLE}`);
  return 'elevation';
}

function readValue(part: string, of: SweptQuantity): number {
  const { dimension, atLeast, atMost, bounds } = SWEPT[of];
  const parsed = parseQuantity(part, dimension);
  if ('problem' in parsed) throw new UsageFault(`--across ${parsed.problem}`);
  const slack = 1e-9 * Math.abs(atMost);
  if (parsed.value < atLeast - slack || parsed.value > atMost + slack)
    throw new UsageFault(`--across ${part} is out of bounds: from ${bounds}`);
  return parsed.value;
}
