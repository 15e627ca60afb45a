import { Scope } from '../../src/drill/evaluate.js';
import type { PrintedUnit, Problem } from '../../src/drill/problem.js';
import type { RuleSet, UnitRules } from '../../src/drill/rules/rule-set.js';
import { recompute } from './independent.js';

/** What pumps, hose, tanks and gauges bear: outside of it no problem is set. Least and most by the unit of the answer. */
const BOUNDS: Partial<Record<PrintedUnit, readonly [number, number]>> = {
  psi: [0.5, 600],
  kPa: [4, 4200],
  gpm: [1, 3000],
  'L/min': [3, 12000],
  ft: [1, 5000],
  m: [0.3, 1600],
  gal: [1, 20000],
  L: [5, 80000],
  lb: [10, 45000],
  kg: [5, 21000],
  lbf: [1, 700],
  N: [1, 3000],
  min: [0.9, 60],
  inHg: [1, 24],
  mmHg: [30, 620],
};

/** What is wrong with a problem; nothing, where it is sound. */
export function checkProblem(problem: Problem, ruleSet: RuleSet): string[] {
  const faults: string[] = [];
  const wrong = (what: string) => {
    faults.push(what);
  };
  const rules = ruleSet[problem.units] as UnitRules;
  const { answer, steps, slips, choices, question } = problem;
  const last = steps[steps.length - 1];

  for (const step of steps) {
    // The printed substitution, read with its units by mathjs, gives the printed value: figures in it are rounded to two decimals or more.
    const redone = new Scope().evaluate(step.substitution, step.unit);
    const off = Math.abs(redone - step.value);
    const rounded = step.rounding.startsWith('to the nearest') ? rules.rounding.pump_pressure / 2 + 0.1 : 0;
    if (off > 0.012 * Math.abs(step.value) + 0.02 + rounded)
      wrong(`step ${step.symbol}: ${step.substitution} is ${redone}, not ${step.value}`);
    if (/undefined|NaN|Infinity/.test(step.text + step.substitution + step.say))
      wrong(`step ${step.symbol}: ${step.text}`);
  }

  const expected = recompute(problem, rules);
  if (answer.kind === 'word') {
    if (expected !== answer.word) wrong(`the answer is ${answer.word}, recomputed ${expected}`);
    if (new Set(answer.options).size !== answer.options.length) wrong('two options are the same');
    if (!answer.options.includes(answer.word)) wrong('the answer is no option');
    for (const option of answer.options)
      if (
        question.replace(/ Worked out already:.*$/, '').includes(option) ||
        !choices.some(({ text }) => text === option)
      )
        wrong(`${option} is not among the choices, and there alone`);
  } else {
    if (typeof expected !== 'number') throw new Error(`${problem.id}: a number is asked`);
    if (answer.unit !== problem.find.unit || answer.unit !== last.unit)
      wrong('the units of answer and last step differ');
    if (Math.abs(answer.value - last.value) > 0) wrong('the answer is not the last step');
    // Published constants are rounded (0.7854, 7.4805): a millionth would be too fine where they are used.
    const rounded = ['volume', 'water-minutes'].includes(problem.topic);
    const size = rounded ? 1e-5 * Math.max(...problem.steps.map(({ value }) => value)) : 1e-9 * answer.value;
    if (Math.abs(expected - answer.value) > size + 1e-9)
      wrong(`the answer is ${answer.value}, recomputed ${expected}`);
    const [least, most] = BOUNDS[answer.unit] ?? wrongUnit(problem);
    if (!(answer.value >= least && answer.value <= most)) wrong(`${answer.text} is out of bounds`);
    if (!(answer.tolerance > 0 && answer.tolerance <= 0.15 * answer.value))
      wrong(`tolerance ${answer.tolerance}`);
    const shown = Number(answer.text.replace(/,/g, '').split(' ')[0]);
    if (Math.abs(shown - answer.value) > answer.tolerance)
      wrong(`${answer.text} is printed for ${answer.value}`);
  }

  if (slips.length < 1) wrong('no slip');
  for (const slip of slips) {
    if (answer.kind === 'number' && Math.abs((slip.value as number) - answer.value) <= answer.tolerance)
      wrong(`slip ${slip.slip} is marked right`);
    if (slip.value === (answer.kind === 'word' ? answer.word : answer.value))
      wrong(`slip ${slip.slip} is the answer`);
    if (slip.why.length < 10) wrong(`slip ${slip.slip} says nothing`);
  }

  if (choices.filter(({ right }) => right).length !== 1) wrong('not one right choice');
  if (choices.length !== 4) wrong(`${choices.length} choices`);
  for (const [i, a] of choices.entries())
    for (const b of choices.slice(i + 1)) {
      if (a.text === b.text) wrong(`two choices say ${a.text}`);
      if (
        answer.kind === 'number' &&
        Math.abs((a.value as number) - (b.value as number)) <= 2 * answer.tolerance
      )
        wrong(`choices ${a.text} and ${b.text} lie within each other's tolerance`);
    }
  for (const { text, value } of choices) {
    const times = answer.kind === 'number' ? Number(value) / answer.value : 1;
    if (times > 3 || times < 1 / 3) wrong(`nobody takes ${text} for right`);
  }
  for (const choice of choices)
    if (!choice.right && (choice.slip === undefined || (choice.why ?? '').length < 20))
      wrong(`choice ${choice.text} has no mistake behind it`);

  for (const { text, symbol } of problem.given) {
    const vacuum = text.startsWith('-') && question.includes(`\u2212${text.slice(1)} (a vacuum)`);
    const asked =
      vacuum || symbol === 'n' || problem.topic === 'operating-point' || text === '0 ft' || text === '0 m';
    if (!asked && !mentions(question, text)) wrong(`the question does not give ${symbol} = ${text}`);
  }
  if (/undefined|NaN|\{|\}| {2}/.test(question)) wrong(`the question reads ${question}`);
  for (const { source, name } of problem.constants) if (source.length < 5) wrong(`${name} has no source`);
  const { crossCheck } = problem;
  if (crossCheck) {
    if (!Number.isFinite(crossCheck.solver.value) || crossCheck.reason.length < 5) wrong('no cross-check');
  }
  return faults;
}

function wrongUnit({ id, find }: Problem): never {
  throw new Error(`${id}: no bounds are known of ${find.unit}`);
}

const WORDS = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten'];

/** Whether a text gives a figure, spelt or in digits; a storey by its ordinal. */
function mentions(question: string, text: string): boolean {
  const lower = question.toLowerCase();
  if (lower.includes(text.toLowerCase())) return true;
  const ordinals = ['fourth', 'fifth', 'sixth', 'seventh', 'eighth', 'ninth', 'tenth'];
  if (WORDS.includes(text) && (text === 'one' ? /\ba tender\b|\bone\b/.test(lower) : lower.includes(text)))
    return true;
  return ordinals[Number(text) - 4] !== undefined && lower.includes(ordinals[Number(text) - 4]);
}
