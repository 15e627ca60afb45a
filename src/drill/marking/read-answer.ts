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
  if (chosen === 'torn')
    return { kind: 'unreadable', note: `the letter and the answer in ${text} are not one choice` };
  if (problem.answer.kind === 'word') {
    const word = chosen ?? optionOf(problem.answer.options, text);
    if (word === undefined)
      return { kind: 'unreadable', note: `not one of: ${problem.answer.options.join('; ')}` };
    return { kind: 'word', word: String(word) };
  }
  if (chosen !== undefined) return { kind: 'number', value: Number(chosen) };
  return numberOf(problem.answer, text);
}

/** The value of the choice that is meant: by its letter, as it is printed, or both; `torn` where they do not agree. */
function choiceOf(problem: Problem, text: string): number | string | 'torn' | undefined {
  const printed = problem.choices.find((choice) => bare(choice.text) === bare(text));
  if (printed !== undefined) return printed.value;
  const [, sign, rest] = /^\(?([A-Za-z])(?:[).:]+\s*|\s+|$)(.*)$/.exec(text) ?? [];
  const lettered = problem.choices.find(({ letter }) => letter === sign?.toUpperCase());
  if (lettered === undefined) return undefined;
  if (rest === '') return lettered.value;
  const said = bare(rest);
  const meant =
    bare(lettered.text) === said ||
    (problem.answer.kind === 'number' ? saysNumber(problem.answer, rest, lettered.text) : false);
  if (meant) return lettered.value;
  // `a fire engine` begins with a letter and is no choice: only a figure or another choice contradicts.
  const other = problem.choices.some((choice) => bare(choice.text) === said) || /^[\d.]/.test(rest);
  return other ? 'torn' : undefined;
}

/** Whether a text gives the figure of a choice as it is printed. */
function saysNumber(answer: NumberAnswer, text: string, printed: string): boolean {
  const [one, other] = [numberOf(answer, text), numberOf(answer, printed)];
  if (one.kind !== 'number' || other.kind !== 'number') return false;
  return Math.abs(one.value - other.value) <= answer.tolerance;
}

const bare = (text: string) =>
  text
    .toLowerCase()
    .replace(/(\d),(?=\d{3}(?!\d))/g, '$1')
    .replace(/[^a-z0-9.]+/g, ' ')
    .replace(/\.(?!\d)/g, ' ')
    .trim();

const DENIED = /\b(?:not|isn t|never|or|either)\b/;

/** The option that a text names, or the only one that holds it. */
function optionOf(options: readonly string[], text: string): string | undefined {
  const said = bare(text);
  const exact = options.find((option) => bare(option) === said);
  if (exact !== undefined || said.length < 3) return exact;
  const holding = options.filter((option) => bare(option).includes(said) || said.includes(bare(option)));
  if (holding.length === 1) return holding[0];
  if (DENIED.test(said)) return undefined;
  // `two pumps in parallel` holds every word of one option alone.
  const words = new Set(said.split(' '));
  const spelt = options.filter((option) =>
    bare(option)
      .split(' ')
      .every((word) => words.has(word)),
  );
  return spelt.length === 1 ? spelt[0] : undefined;
}

/** Whatever stands before the figure: `PDP =`, `about`, `~`. */
const LEAD_IN = /^(?:[^\d=≈~]*[=≈~:]\s*|(?:about|approx\.?|ca\.?|circa)\s+)/i;

/** `15:18` as minutes and seconds, `26 ft 4 in` as feet and inches. */
function inTwoParts(answer: NumberAnswer, text: string): Reading | undefined {
  const time = /^(\d+):([0-5]\d)(?:\s*(?:min|minutes)?\.?)?$/i.exec(text);
  const spelt =
    /^(\d+)\s*(?:min|minutes?|m|['′’])\.?\s*(\d+(?:\.\d+)?)\s*(?:s|sec|seconds?|["″”]|'')\.?$/i.exec(text);
  if (answer.unit === 'min' && (time ?? spelt)) {
    const [, minutes, seconds] = (time ?? spelt) as RegExpExecArray;
    return { kind: 'number', value: Number(minutes) + Number(seconds) / 60 };
  }
  const feet =
    /^(\d+)\s*(?:ft|feet|foot|['′’])\.?[\s,-]*(\d+(?:\.\d+)?)\s*(?:in|inch|inches|["″”]|'')\.?$/i.exec(text);
  if (feet === null || siOf(1, answer.unit)?.dimension !== siOf(1, 'ft')?.dimension) return undefined;
  const total = Number(feet[1]) + Number(feet[2]) / 12;
  return answer.unit === 'ft' ? { kind: 'number', value: total } : converted(total, 'ft', answer.unit);
}

function numberOf(answer: NumberAnswer, given: string): Reading {
  const doubted = given.replace(/\s*\(?\?+\)?$/, '');
  if (doubted !== given && doubted !== '') {
    const read = numberOf(answer, doubted);
    return read.kind === 'number'
      ? { ...read, note: read.note ?? 'it was written with a question mark' }
      : read;
  }
  const text = given.replace(LEAD_IN, '').trim();
  const parts = inTwoParts(answer, text);
  if (parts !== undefined) return parts;
  const figure = text
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
