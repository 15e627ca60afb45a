import { type FormulaNode, formulaUnit, isBare, oneOf, parsed } from './evaluate.js';
import type { Figure, PrintedUnit } from './problem.js';

/** An amount in SI; its kind is a number that adds up under multiplication, alike for like kinds only. */
interface Amount {
  readonly value: number;
  readonly kind: number;
}

type Amounts = ReadonlyMap<string, Amount>;
type Sum = (amounts: Amounts) => Amount;

/** Far enough apart that no product of trade units is taken for another. */
const WEIGHTS = [1, 97, 9973, 1e6 + 3, 1e8 + 7, 1e9 + 7, 1e10 + 19, 1e11 + 3, 1e12 + 39];
const NEAR = 1e-6;

const bare = (value: number): Amount => ({ value, kind: 0 });
const same = (a: number, b: number): boolean => Math.abs(a - b) < NEAR;

function kindOf(dimensions: readonly number[]): number {
  return dimensions.reduce((sum, power, index) => sum + power * WEIGHTS[index], 0);
}

const units = new Map<string, Amount>();

function unitAmount(name: string): Amount {
  let amount = units.get(name);
  if (amount === undefined) {
    const { value, dimensions } = oneOf(name);
    amount = { value, kind: kindOf(dimensions) };
    units.set(name, amount);
  }
  return amount;
}

type Operation = (a: Amount, b: Amount) => Amount;

function alike(work: (a: number, b: number) => number): Operation {
  return (a, b) => {
    if (!same(a.kind, b.kind)) throw new TypeError('quantities of two kinds cannot be added or compared');
    return { value: work(a.value, b.value), kind: a.kind };
  };
}

function power(a: Amount, b: Amount): Amount {
  if (!same(b.kind, 0)) throw new TypeError('a power is a bare number');
  return { value: a.value ** b.value, kind: a.kind * b.value };
}

const OPERATIONS: Record<string, Operation> = {
  add: alike((a, b) => a + b),
  subtract: alike((a, b) => a - b),
  max: alike(Math.max),
  min: alike(Math.min),
  multiply: (a, b) => ({ value: a.value * b.value, kind: a.kind + b.kind }),
  divide: (a, b) => ({ value: a.value / b.value, kind: a.kind - b.kind }),
  pow: power,
};

const BARE_FUNCTIONS: Record<string, (value: number) => number> = {
  sqrt: Math.sqrt,
  abs: Math.abs,
  round: Math.round,
  fix: Math.trunc,
};

function callSum(name: string, args: Sum[]): Sum {
  const [a, b] = args;
  if (name === 'unaryMinus' && args.length === 1) {
    return (amounts) => {
      const { value, kind } = a(amounts);
      return { value: -value, kind };
    };
  }
  const operation = OPERATIONS[name];
  if (operation && args.length === 2) return (amounts) => operation(a(amounts), b(amounts));
  const onBare = BARE_FUNCTIONS[name];
  if (onBare && args.length === 1) {
    return (amounts) => {
      const { value, kind } = a(amounts);
      if (!same(kind, 0)) throw new TypeError(`${name} is of a bare number`);
      return bare(onBare(value));
    };
  }
  throw new RangeError(`formulae have no ${name} of ${args.length}`);
}

function sumOf(node: FormulaNode): Sum {
  switch (node.type) {
    case 'ParenthesisNode':
      return sumOf(node.content as FormulaNode);
    case 'ConstantNode': {
      const amount = bare(Number(node.value));
      return () => amount;
    }
    case 'SymbolNode': {
      const name = node.name as string;
      return (amounts) => amounts.get(name) ?? unitAmount(name);
    }
    case 'OperatorNode':
      return callSum(node.fn as string, (node.args ?? []).map(sumOf));
    case 'FunctionNode':
      return callSum((node.fn as { name: string }).name, (node.args ?? []).map(sumOf));
    default:
      throw new RangeError(`formulae have no ${node.type}`);
  }
}

const sums = new Map<string, Sum>();

/**
 * What `Scope` is, many times as fast: the formula as mathjs parsed it, worked in SI with the kinds of the quantities
 * checked. For redoing a sum with a slip, hundreds of times a sheet; what a key prints is worked by `Scope`.
 */
export class QuickScope {
  readonly #amounts = new Map<string, Amount>();

  set(symbol: string, { value, unit }: Figure): void {
    const one = isBare(unit) ? bare(1) : unitAmount(formulaUnit(unit));
    this.#amounts.set(symbol, { value: value * one.value, kind: one.kind });
  }

  /** Errors: as `Scope` has them; RangeError where the formula has an operation that no topic uses. */
  evaluate(formula: string, unit: PrintedUnit): number {
    let sum = sums.get(formula);
    if (sum === undefined) {
      sum = sumOf(parsed(formula));
      sums.set(formula, sum);
    }
    const { value, kind } = sum(this.#amounts);
    const one = isBare(unit) ? bare(1) : unitAmount(formulaUnit(unit));
    if (!same(kind, one.kind))
      throw new TypeError(`${formula} does not come out in ${unit || 'a bare number'}`);
    const amount = value / one.value;
    if (!Number.isFinite(amount)) throw new TypeError(`${formula} has no value`);
    return amount;
  }
}
