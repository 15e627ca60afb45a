import { readNumber } from '../../quantity/number.js';
import { findUnit, fromUnit, toUnit, UNITS, type UnitName } from '../../quantity/units.js';
import type { NumberAnswer, PrintedUnit, Problem } from '../problem.js';

/** What a cell says: a number in the answer's unit, a word, nothing, or nothing that can be read. */
export type Reading =
  | { readonly kind: 'blank' }
  | { readonly kind: 'number'; readonly value: number; readonly note?: string }
  | { readonly kind: 'word'; readonly word: string }
  | { readonly kind: 'unreadable'; readonly note: string };

/** Ways to leave a question out on paper or in a spreadsheet. */
const BLANK = /^(?:[-–—.?_]+|n\/?a|#n\/a|none|blank)?$/i;

/** Units of mercury and distance that the quantities of a layout do not need, in SI. */
const MERCURY: Readonly<Record<string, number>> = {
  inhg: 3386.388640341,
  'in hg': 3386.388640341,
  '"hg': 3386.388640341,
  'inches of mercury': 3386.388640341,
  mmhg: 133.322387415,
  'mm hg': 133.322387415,
};

/** Reads the answer to a problem, in words, as a choice's letter or as a number with or without its unit. */
export function readAnswer(problem: Problem, cell: string): Reading {
  const text = cell.replace(/[\u00a0\u2009\u202f\ufeff]/g, ' ').trim();
  if (BLANK.test(text)) return { kind: 'blank' };
  const chosen = choiceOf(problem, text);
  if (problem.answer.kind === 'word') {
    const word = chosen ?? optionOf(problem.answer.options, text);
    if (word === undefined)
      return { kind: 'unreadable', note: `not one of: ${problem.answer.options.join('; ')}` };
    return { kind: 'word', word: String(word) };
  }
  if (chosen !== undefined) return { kind: 'number', value: Number(chosen) };
  return numberOf(problem.answer, text);
}

function choiceOf(problem: Problem, text: string): number | string | undefined {
  const letter = /^\(?([A-Za-z])[).:]?$/.exec(text)?.[1].toUpperCase();
  return problem.choices.find((choice) => choice.letter === letter)?.value;
}

const bare = (text: string) =>
  text
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, ' ')
    .trim();

/** The option that a text names, or the only one that holds it. */
function optionOf(options: readonly string[], text: string): string | undefined {
  const said = bare(text);
  const exact = options.find((option) => bare(option) === said);
  if (exact !== undefined || said.length < 3) return exact;
  const holding = options.filter((option) => bare(option).includes(said) || said.includes(bare(option)));
  return holding.length === 1 ? holding[0] : undefined;
}

/** Whatever stands before the figure: `PDP =`, `about`, `~`. */
const LEAD_IN = /^(?:[^\d=≈~]*[=≈~:]\s*|(?:about|approx\.?|ca\.?|circa)\s+)/i;

function numberOf(answer: NumberAnswer, text: string): Reading {
  const figure = text
    .replace(LEAD_IN, '')
    // 1 200 and 1'200 are thousands; 1 1/2 is not.
    .replace(/(\d)[ '’](\d{3})(?!\d|\s*\/)/g, '$1$2');
  const number = readNumber(figure);
  let value: number;
  let rest: string;
  if ('value' in number) {
    value = number.value;
    rest = number.rest;
  } else if (number.fault === 'comma') {
    value = Number(number.decimal);
    rest = number.rest;
  } else {
    const comma = /^([+-]?\d+),(\d+)(?![\d,])\s*(.*)$/.exec(figure);
    if (comma === null) return { kind: 'unreadable', note: `no number could be read in ${text}` };
    value = Number(`${comma[1]}.${comma[2]}`);
    rest = comma[3];
  }
  const comma = /^([+-]?\d+),(\d{1,2}|\d{4,})(?!\d|,)\s*(.*)$/.exec(figure);
  if (comma !== null) {
    value = Number(`${comma[1]}.${comma[2]}`);
    rest = comma[3].trim();
  }
  const read = converted(value, rest, answer.unit);
  if (read.kind !== 'number') return read;
  // 1.200 is one and a fifth, or twelve hundred where a point sets off thousands: the answer tells.
  const thousands = read.value * 1000;
  if (/^[+-]?\d{1,3}\.\d{3}(?!\d)/.test(figure) && Math.abs(thousands - answer.value) <= answer.tolerance)
    return { kind: 'number', value: thousands, note: 'the point was read as setting off thousands' };
  return read;
}

function converted(value: number, rest: string, unit: PrintedUnit): Reading {
  const stripped = rest.replace(/^[\s.]+|[\s.;]+$/g, '');
  // A force is called pounds too.
  const said = unit === 'lbf' && /^(?:lbs?|pounds?)$/i.test(stripped) ? 'lbf' : stripped;
  if (said === '' || bareUnit(said) === bareUnit(unit)) return { kind: 'number', value };
  const wanted = siOf(1, unit);
  const given = siOf(value, said);
  if (given === undefined)
    return /^[a-z%"'°]/i.test(said) && !/\d/.test(said)
      ? { kind: 'number', value, note: `the unit ${said} is not known: read as ${unit}` }
      : { kind: 'unreadable', note: `${said} after the number could not be read` };
  if (wanted === undefined || given.dimension !== wanted.dimension)
    return { kind: 'unreadable', note: `${said} is not a unit of what was asked (${unit})` };
  return { kind: 'number', value: given.value / wanted.value, note: `given in ${said}, asked in ${unit}` };
}

const bareUnit = (unit: string) => unit.toLowerCase().replace(/[\s.]/g, '');

function siOf(value: number, unit: string): { value: number; dimension: string } | undefined {
  const mercury = MERCURY[unit.toLowerCase()];
  if (mercury !== undefined) return { value: value * mercury, dimension: 'pressure' };
  const name: UnitName | undefined = findUnit(unit);
  if (name === undefined) return undefined;
  const { dimension } = UNITS[name];
  return { value: fromUnit(value, name) - (toUnit(0, name) === 0 ? 0 : fromUnit(0, name)), dimension };
}
