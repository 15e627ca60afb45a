import type { Answer, Figure, Problem, Step } from '../../drill/problem.js';
import { checkedNumber } from '../checked-number.js';
import type { PrintedSheet } from './printed-sheet.js';

/** Changes only when a shape breaks, never when a key is added. */
export const DRILL_JSON_FORMAT = 1;

const DIGITS = 12;

export const bare = (path: string, value: number): number =>
  Number(checkedNumber(path, value).toPrecision(DIGITS));

const quantity = (path: string, { value, unit }: Figure) => ({ value: bare(path, value), unit });

const answerJson = (path: string, answer: Answer) =>
  answer.kind === 'number'
    ? { ...quantity(path, answer), text: answer.text }
    : { word: answer.word, options: [...answer.options], text: answer.text };

const toleranceJson = (path: string, answer: Answer) =>
  answer.kind === 'number' ? { value: bare(path, answer.tolerance), unit: answer.unit } : null;

const stepJson = (path: string, step: Step) => ({
  say: step.say,
  symbol: step.symbol,
  formula: step.formula,
  substitution: step.substitution,
  ...quantity(path, step),
  text: step.text,
  rounding: step.rounding,
});

const valueJson = (path: string, value: number | string) =>
  typeof value === 'number' ? bare(path, value) : value;

const placeOf = ({ number }: Problem): string => `problems[${number - 1}]`;

/** What a student may see. */
function questionJson(problem: Problem) {
  const at = placeOf(problem);
  return {
    number: problem.number,
    id: problem.id,
    topic: problem.topic,
    topic_title: problem.topicTitle,
    level: problem.level,
    rules: problem.rules,
    units: problem.units,
    seed: problem.seed,
    version: problem.version,
    question: problem.question,
    sketch: problem.sketch?.words ?? null,
    given: problem.given.map(({ symbol, name, text, ...figure }) => ({
      symbol,
      name,
      ...quantity(`${at}.given`, figure),
      text,
    })),
    find: { ...problem.find },
    choices: problem.choices.map(({ letter, text }) => ({ letter, text })),
  };
}

function problemJson(problem: Problem) {
  const at = placeOf(problem);
  const { constants, crossCheck, steps, slips, choices, answer } = problem;
  return {
    ...questionJson(problem),
    constants: constants.map(({ symbol, name, text, source, ...figure }) => ({
      symbol,
      name,
      ...quantity(`${at}.constants`, figure),
      text,
      source,
    })),
    rules_used: problem.rulesUsed.map(({ text, source }) => ({ text, source })),
    answer: answerJson(`${at}.answer`, answer),
    tolerance: toleranceJson(`${at}.tolerance`, answer),
    steps: steps.map((step, index) => stepJson(`${at}.steps[${index}]`, step)),
    solver: crossCheck
      ? {
          hand: quantity(`${at}.solver.hand`, crossCheck.hand),
          answer: quantity(`${at}.solver.answer`, crossCheck.solver),
          reason: crossCheck.reason,
        }
      : null,
    slips: slips.map(({ slip, why, value, text }) => ({
      slip,
      why,
      value: valueJson(`${at}.slips`, value),
      text,
    })),
    choices: choices.map(({ letter, text, value, right, slip, why }) => ({
      letter,
      text,
      value: valueJson(`${at}.choices`, value),
      right,
      slip: slip ?? null,
      why: why ?? null,
    })),
  };
}

/** A sheet as other programs read it, with its key unless that goes elsewhere. A key that has no value is null. */
export function sheetJson({ sheet, code, command }: PrintedSheet, withKey = true) {
  const { seed, level, units, rules, version, problems } = sheet;
  return {
    format: DRILL_JSON_FORMAT,
    question: 'drill',
    version,
    sheet: code,
    command,
    seed,
    level,
    units,
    rules: { name: rules.name, title: rules.title, source: rules.source },
    problems: problems.map(withKey ? problemJson : questionJson),
  };
}
