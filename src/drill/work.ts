import type { Alteration, Draft, Rounding, SumStep } from './draft.js';
import { formulaUnit, Scope } from './evaluate.js';
import { decimalsOf, roundTo, worked } from './print.js';
import type { Step } from './problem.js';
import { QuickScope } from './quick-scope.js';

/** A draft with every step worked: the value of each symbol in the unit it is printed in. */
export interface Worked {
  readonly value: (symbol: string) => number;
  readonly answer: number;
  /** The answer before the rule set rounds it. */
  readonly exact: number;
}

/**
 * Works a draft's sum, or redoes it with a slip: figures or formulae are changed, and everything after follows. `quick`
 * leaves out the check of units, for sums that are only tried.
 *
 * Errors: TypeError where a formula does not come out in its unit.
 */
export function work(draft: Draft, alteration?: Alteration, quick = alteration !== undefined): Worked {
  const scope = quick ? new QuickScope() : new Scope();
  const values = new Map<string, number>();
  const put = (symbol: string, value: number, unit: SumStep['unit']) => {
    values.set(symbol, value);
    scope.set(symbol, { value, unit });
  };
  const facts = [...draft.given, ...draft.constants];
  for (const { symbol, value, unit } of facts) put(symbol, value, unit);
  for (const { symbol, formula, unit, decimals } of draft.done ?? []) {
    const exact = scope.evaluate(formula, unit);
    put(symbol, roundTo(exact, decimals ?? decimalsOf(exact, unit)), unit);
  }
  for (const { symbol, unit } of [...facts, ...(draft.done ?? [])]) {
    const changed = alteration?.set?.[symbol];
    if (changed !== undefined) put(symbol, changed, unit);
  }
  let answer = Number.NaN;
  let exact = Number.NaN;
  for (const { symbol, formula, unit, round } of draft.sum) {
    exact = scope.evaluate(alteration?.formulas?.[symbol] ?? formula, unit);
    answer = round ? rounded(exact, round) : exact;
    put(symbol, answer, unit);
  }
  const value = (symbol: string) => {
    const found = values.get(symbol);
    if (found === undefined) throw new Error(`nothing is called ${symbol}`);
    return found;
  };
  return { value, answer, exact };
}

function rounded(value: number, { to, how }: Rounding): number {
  const count = value / to;
  return to * (how === 'down' ? Math.floor(count + 1e-9) : roundTo(count, 0));
}

/** The steps as the key prints them. */
export function stepsOf(draft: Draft, { value }: Worked): Step[] {
  const figures = new Map<string, string>();
  for (const { symbol, unit } of [...draft.given, ...draft.constants, ...(draft.done ?? [])])
    figures.set(symbol, inFormula(value(symbol), unit));
  return draft.sum.map(({ symbol, say, formula, unit, decimals, round }, index) => {
    const amount = value(symbol);
    const shown = decimals ?? shownDecimals(amount, unit, index === draft.sum.length - 1);
    const text = worked(amount, unit, shown);
    const substitution = substituted(formula, figures);
    figures.set(symbol, inFormula(Number(roundTo(amount, Math.max(shown, 2))), unit));
    const rounding = round ? round.text : `shown to ${worked(10 ** -shown, unit, shown)}; carried unrounded`;
    return { symbol, say, formula, substitution, value: amount, unit, text, rounding };
  });
}

function shownDecimals(value: number, unit: Step['unit'], last: boolean): number {
  return decimalsOf(value, unit) + (last ? 0 : 1);
}

function inFormula(value: number, unit: Step['unit']): string {
  const text = Number.isInteger(value) ? `${value}` : `${Number(value.toPrecision(7))}`;
  if (unit === '' || unit === '%') return text;
  return `${text} ${formulaUnit(unit)}`;
}

/** The formula with figures in the place of symbols, so that mathjs still reads it. */
export function substituted(formula: string, figures: ReadonlyMap<string, string>): string {
  return formula.replace(/[A-Za-z_][A-Za-z_0-9]*/g, (name, at: number) => {
    const text = figures.get(name);
    if (text === undefined) return name;
    const before = formula.slice(0, at).trimEnd();
    const after = formula.slice(at + name.length).trimStart();
    const bare = /^[\d.]+$/.test(text);
    const tight = after.startsWith('^') || /\/$/.test(before) || /\/\S/.test(text.replace(/^-?[\d.]+ /, ''));
    return (!bare && tight) || text.startsWith('-') ? `(${text})` : text;
  });
}
