import * as z from 'zod';
import type { Dimension } from './dimension.js';
import { exampleOf, KINDS, type ParseOptions, parseQuantity } from './parse.js';
import { toUnit, type UnitName } from './units.js';

export interface QuantityOptions extends ParseOptions {
  /** More than zero. */
  positive?: boolean;
  /** Bounds in SI, themselves allowed. */
  atLeast?: number;
  atMost?: number;
  description?: string;
}

export type QuantitySchema = z.ZodType<number, string>;

const made = new Map<string, QuantitySchema>();

/**
 * A schema that reads text with a unit and gives the SI value. Its failures are whole sentences for the reader, and
 * its JSON Schema (of the input) is a described string with examples.
 */
export function quantity(dimension: Dimension, options: QuantityOptions = {}): QuantitySchema {
  const key = `${dimension} ${JSON.stringify(options)}`;
  const known = made.get(key);
  if (known) return known;
  const schema = make(dimension, options);
  made.set(key, schema);
  return schema;
}

function make(dimension: Dimension, options: QuantityOptions): QuantitySchema {
  const kind = KINDS[dimension];
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
          'problem' in parsed ? parsed.problem : outOfBounds(text, parsed.value, parsed.unit, options);
        if (problem !== undefined) {
          context.issues.push({ code: 'custom', message: problem, input: text });
          return z.NEVER;
        }
        return 'value' in parsed ? parsed.value : z.NEVER;
      }) as unknown as QuantitySchema
  );
}

function outOfBounds(
  text: string,
  value: number,
  unit: UnitName,
  { positive, atLeast, atMost }: QuantityOptions,
): string | undefined {
  const shown = (si: number) => `${Number(toUnit(si, unit).toPrecision(6))} ${unit}`;
  if (positive && !(value > 0)) return `${text.trim()} must be more than zero`;
  if (atLeast !== undefined && value < atLeast)
    return `${text.trim()} is too small: at least ${shown(atLeast)} is wanted`;
  if (atMost !== undefined && value > atMost)
    return `${text.trim()} is too large: at most ${shown(atMost)} is wanted`;
  return undefined;
}
