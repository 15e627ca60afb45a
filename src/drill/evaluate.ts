import { createCreateUnit, createUnitClass, createUnitFunction } from 'mathjs';
// Only what formulae with units need is built: all of mathjs takes several times as long to start. Loaded with the drill only.
import {
  absDependencies,
  addDependencies,
  create,
  divideDependencies,
  equalDependencies,
  type FactoryFunctionMap,
  factory,
  fixDependencies,
  formatDependencies,
  isNumericDependencies,
  multiplyDependencies,
  numberDependencies,
  parseDependencies,
  powDependencies,
  roundDependencies,
  sqrtDependencies,
  subtractDependencies,
  unaryMinusDependencies,
} from 'mathjs/number';
import type { Figure, PrintedUnit } from './problem.js';

/** What is used of a mathjs unit; its own types do not reach a hand-picked build. */
interface UnitValue {
  /** In SI. */
  value: number;
  /** Powers of mass, length, time and what follows. */
  dimensions: number[];
  fixPrefix: boolean;
  clone(): UnitValue;
  equalBase(other: UnitValue): boolean;
  multiply(other: UnitValue | number): UnitValue | number;
  divide(other: UnitValue | number): UnitValue | number;
  pow(power: number): UnitValue;
  toNumber(unit: string): number;
}

/** A part of a parsed formula. */
export interface FormulaNode {
  type: string;
  /** The operation of an OperatorNode; of a FunctionNode, the node that names it. */
  fn?: string | { name: string };
  args?: FormulaNode[];
  content?: FormulaNode;
  value?: unknown;
  name?: string;
}

type Quantity = UnitValue | number;

interface Compiled {
  evaluate(scope: Map<string, Quantity>): Quantity;
}

interface Build {
  typed(name: string, signatures: Record<string, (...values: never[]) => unknown>): unknown;
  import(functions: Record<string, unknown>, options: { override: boolean }): void;
  createUnit(name: string, definition: string, options?: { override: boolean }): void;
  unit(value: number, unit: string): UnitValue;
  parse(formula: string): FormulaNode & { compile(): Compiled };
}

const make = factory as unknown as (
  name: string,
  dependencies: string[],
  create: (given: Record<string, unknown>) => unknown,
) => unknown;

/** The unit class asks for the scalar forms of the operations, and for kinds of number that are not used here. */
const scalar = (name: string, from: string) =>
  make(name, [from], (given: Record<string, unknown>) => given[from]);
const unused = (name: string) => make(name, [], () => class {});

function build(): Build {
  const parts = {
    ...parseDependencies,
    ...absDependencies,
    ...addDependencies,
    ...subtractDependencies,
    ...multiplyDependencies,
    ...divideDependencies,
    ...powDependencies,
    ...sqrtDependencies,
    ...roundDependencies,
    ...fixDependencies,
    ...equalDependencies,
    ...isNumericDependencies,
    ...formatDependencies,
    ...numberDependencies,
    ...unaryMinusDependencies,
    addScalar: scalar('addScalar', 'add'),
    subtractScalar: scalar('subtractScalar', 'subtract'),
    multiplyScalar: scalar('multiplyScalar', 'multiply'),
    divideScalar: scalar('divideScalar', 'divide'),
    complex: unused('Complex'),
    bigNumber: unused('BigNumber'),
    fraction: unused('Fraction'),
    createUnitClass,
    createUnitFunction,
    createCreateUnit,
  };
  const math = create(parts as unknown as FactoryFunctionMap, {}) as unknown as Build;
  const { typed } = math;
  const together = (sign: number) => (a: UnitValue, b: UnitValue) => {
    if (!a.equalBase(b)) throw new TypeError('quantities of two kinds cannot be added');
    const sum = a.clone();
    sum.value = a.value + sign * b.value;
    sum.fixPrefix = false;
    return sum;
  };
  math.import(
    {
      add: typed('add', { 'number, number': (a: number, b: number) => a + b, 'Unit, Unit': together(1) }),
      subtract: typed('subtract', {
        'number, number': (a: number, b: number) => a - b,
        'Unit, Unit': together(-1),
      }),
      multiply: typed('multiply', {
        'number, number': (a: number, b: number) => a * b,
        'Unit, Unit': (a: UnitValue, b: UnitValue) => a.multiply(b),
        'Unit, number': (a: UnitValue, b: number) => a.multiply(b),
        'number, Unit': (a: number, b: UnitValue) => b.multiply(a),
      }),
      divide: typed('divide', {
        'number, number': (a: number, b: number) => a / b,
        'Unit, Unit': (a: UnitValue, b: UnitValue) => a.divide(b),
        'Unit, number': (a: UnitValue, b: number) => a.divide(b),
        'number, Unit': (a: number, b: UnitValue) => b.pow(-1).multiply(a),
      }),
      pow: typed('pow', {
        'number, number': (a: number, b: number) => a ** b,
        'Unit, number': (a: UnitValue, b: number) => a.pow(b),
      }),
      unaryMinus: typed('unaryMinus', {
        number: (a: number) => -a,
        Unit: (a: UnitValue) => a.multiply(-1),
      }),
      max: typed('max', {
        'number, number': (a: number, b: number) => Math.max(a, b),
        'Unit, Unit': (a: UnitValue, b: UnitValue) => (together(-1)(a, b).value >= 0 ? a : b),
      }),
    },
    { override: true },
  );
  // The trade's units, and the exact psi and gallon in place of mathjs's rounded ones.
  const exact = { override: true };
  math.createUnit('psi', '6894.757293168361 Pa', exact);
  math.createUnit('gal', '231 inch^3', exact);
  math.createUnit('gpm', '231 inch^3/minute');
  math.createUnit('lpm', '0.001 m^3/minute');
  math.createUnit('inHg', '3386.388640341 Pa', exact);
  return math;
}

let built: Build | undefined;
const compiled = new Map<string, Compiled>();
const units = new Map<string, UnitValue>();

/** How a printed unit is written in a formula; `in` and `min` mean other things to mathjs. */
const IN_FORMULA: Partial<Record<PrintedUnit, string>> = {
  in: 'inch',
  'in²': 'inch^2',
  L: 'litre',
  'L/min': 'lpm',
  min: 'minute',
  mi: 'mile',
  'ft³': 'ft^3',
  'm³': 'm^3',
  N: 'newton',
  'kg/L': 'kg/litre',
};

export function formulaUnit(unit: PrintedUnit): string {
  return IN_FORMULA[unit] ?? unit;
}

export const isBare = (unit: PrintedUnit): boolean => unit === '' || unit === '%';

/** One of a unit as formulae name it. */
export function oneOf(name: string): UnitValue {
  let one = units.get(name);
  if (one === undefined) {
    built ??= build();
    one = built.unit(1, name);
    units.set(name, one);
  }
  return one;
}

export function parsed(formula: string): FormulaNode {
  built ??= build();
  return built.parse(formula);
}

const quantity = ({ value, unit }: Figure): Quantity =>
  isBare(unit) ? value : oneOf(formulaUnit(unit)).multiply(value);

/** Named quantities that formulae are evaluated over. */
export class Scope {
  readonly #values = new Map<string, Quantity>();

  set(symbol: string, figure: Figure): void {
    this.#values.set(symbol, quantity(figure));
  }

  /**
   * The value of a formula in `unit`.
   *
   * Errors: TypeError where the formula gives another kind of quantity, a symbol is unknown, or the value is no finite number.
   */
  evaluate(formula: string, unit: PrintedUnit): number {
    built ??= build();
    let code = compiled.get(formula);
    if (code === undefined) {
      code = built.parse(formula).compile();
      compiled.set(formula, code);
    }
    const result = code.evaluate(this.#values);
    if (isBare(unit) !== (typeof result === 'number'))
      throw new TypeError(`${formula} does not come out in ${unit || 'a bare number'}`);
    const value = typeof result === 'number' ? result : result.toNumber(formulaUnit(unit));
    if (!Number.isFinite(value)) throw new TypeError(`${formula} has no value`);
    return value;
  }
}
