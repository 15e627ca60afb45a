import * as z from 'zod';
import { type Bounds, USUAL_BOUNDS } from './bounds.js';
import type { Dimension } from './dimension.js';
import { exampleOf, KINDS, type ParseOptions, parseQuantity } from './parse.js';
import { toUnit, type UnitName } from './units.js';

export interface QuantityOptions extends ParseOptions {
  /** More than zero. */
  positive?: boolean;
  /** Bounds in SI, themselves allowed; without them those of `USUAL_BOUNDS`. */
  atLeast?: number;
  atMost?: number;
  description?: string;
}

export type QuantitySchema = z.ZodType<number, string>;

const made = new Map<string, QuantitySchema>();
const boundsBySchema = new WeakMap<object, QuantityBounds>();

/** Ends of what a field may hold, in SI, both allowed. */
export interface QuantityBounds {
  dimension: Dimension;
  lowest: number;
  highest: number;
}

/** The bounds of a schema that `quantity` made; undefined for any other. */
export function boundsOf(schema: object): QuantityBounds | undefined {
  return boundsBySchema.get(schema);
}

/**
 * A schema that reads text with a unit and gives the SI value. Its failures are whole sentences for the reader, and
 * its JSON Schema (of the input) is a described string with examples.
 */
export function quantity(dimension: Dimension, options: QuantityOptions = {}): QuantitySchema {
  const key = `${dimension} ${JSON.stringify(options)}`;
  const known = made.get(key);
  if (known) return known;
  const schema = make(dimension, options);
  const { lowest, highest } = boundsFor(dimension, options);
  boundsBySchema.set(schema, { dimension, lowest, highest });
  made.set(key, schema);
  return schema;
}

function make(dimension: Dimension, options: QuantityOptions): QuantitySchema {
  const kind = KINDS[dimension];
  const bounds = boundsFor(dimension, options);
  return (
    z
      .string({
        error: (issue) => {
          const parsed = parseQuantity(issue.input, dimension, options);
          return 'problem' in parsed ? parsed.problem : undefined;
        },
      })
      // Registered as it is: `.meta()` would make a second schema of it, and there are a hundred of these.
      .register(z.globalRegistry, {
        description: options.description ?? `${kind.name}, with its unit`,
        examples: [exampleOf(dimension, options)],
        dimension,
      })
      .transform((text, context) => {
        const parsed = parseQuantity(text, dimension, options);
        const problem =
          'problem' in parsed
            ? parsed.problem
            : outOfBounds(text, parsed.value, parsed.unit, bounds, options);
        if (problem !== undefined) {
          context.issues.push({ code: 'custom', message: problem, input: text });
          return z.NEVER;
        }
        return 'value' in parsed ? parsed.value : z.NEVER;
      }) as unknown as QuantitySchema
  );
}

function boundsFor(
  dimension: Dimension,
  { positive, atLeast, atMost }: QuantityOptions,
): Pick<Bounds, 'lowest' | 'highest'> {
  const usual = USUAL_BOUNDS[dimension];
  return { lowest: atLeast ?? (positive ? usual.least : usual.lowest), highest: atMost ?? usual.highest };
}

/** A figure that came through a change of units (1 m in feet) may miss a bound by its last digit. */
const ROUNDING = 1e-12;

function outOfBounds(
  text: string,
  value: number,
  unit: UnitName,
  { lowest, highest }: Pick<Bounds, 'lowest' | 'highest'>,
  { positive }: QuantityOptions,
): string | undefined {
  const shown = (si: number) => `${Number(toUnit(si, unit).toPrecision(6))} ${unit}`;
  if (positive && !(value > 0)) return `${text.trim()} must be more than zero`;
  if (value < lowest - ROUNDING * Math.abs(lowest))
    return `${text.trim()} is too small: at least ${shown(lowest)} is wanted`;
  if (value > highest + ROUNDING * Math.abs(highest))
    return `${text.trim()} is too large: at most ${shown(highest)} is wanted`;
  return undefined;
}
