import type * as z from 'zod';
import { nearest } from '../quantity/nearest.js';
import { isMapping, whatStands } from './schema/choice.js';

/** What an issue of a schema says to a reader; `path` from the value that was read. */
export interface Explained {
  path: (string | number)[];
  message: string;
  expected?: string;
  hint?: string;
  /** Whether the key is at fault rather than its value. */
  key?: boolean;
}

const TYPE_NAMES: Record<string, string> = {
  string: 'text',
  number: 'a bare number',
  int: 'a whole number',
  boolean: 'true or false',
  array: 'a list',
  tuple: 'a list',
  object: 'a mapping',
  record: 'a mapping',
};

/** Wording for issues that no schema words itself. */
export const wording: z.core.$ZodErrorMap = (issue) => {
  switch (issue.code) {
    case 'invalid_type':
      return `${whatStands(issue.input)}; ${TYPE_NAMES[issue.expected] ?? issue.expected} is wanted`;
    case 'invalid_value':
      return `${whatStands(issue.input)}; ${listed(issue.values.map(String))} is wanted${meant(issue.input, issue.values.map(String))}`;
    case 'too_small':
      return bound(
        issue.origin,
        issue.input,
        issue.inclusive ? 'at least' : 'more than',
        Number(issue.minimum),
      );
    case 'too_big':
      return bound(
        issue.origin,
        issue.input,
        issue.inclusive ? 'at most' : 'less than',
        Number(issue.maximum),
      );
    default:
      return undefined;
  }
};

function bound(origin: string, input: unknown, how: string, limit: number): string {
  if (origin === 'array')
    return `${how} ${limit} ${limit === 1 ? 'entry is' : 'entries are'} wanted in this list`;
  if (origin === 'string') return `${whatStands(input)}; some text is wanted`;
  return `${whatStands(input)}; ${how} ${limit} is wanted`;
}

function listed(words: readonly string[]): string {
  return words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} or ${words.at(-1)}`;
}

function meant(input: unknown, values: readonly string[]): string {
  const close = typeof input === 'string' ? nearest(input, values) : undefined;
  return close === undefined ? '' : `: did you mean ${close}?`;
}

/** The issues of a schema as a reader needs them, one for each key that is unknown; made as they are asked for. */
export function* explain(
  issues: readonly z.core.$ZodIssue[],
  schema: z.ZodType,
  input: unknown,
): Generator<Explained> {
  for (const issue of issues) {
    const path = issue.path.map((step) => (typeof step === 'symbol' ? String(step) : step));
    if (issue.code === 'unrecognized_keys') {
      const known = keysAt(schema, path, input);
      for (const key of issue.keys) yield unknownKey([...path, key], known);
    } else if (issue.code === 'invalid_union' && 'discriminator' in issue) {
      yield wrongKind(path, issue, schema, input);
    } else {
      yield missingOrWrong(path, issue.message, input);
    }
  }
}

function missingOrWrong(path: (string | number)[], message: string, input: unknown): Explained {
  const missing = missingKey(path, input);
  if (missing === undefined) return { path, message };
  const wanted = / ?([^;:]*) is wanted(.*)$/.exec(message);
  const expected = wanted ? `${wanted[1].trim()}${wanted[2]}` : message.replace(/^expected /, '');
  return { path, message: `${missing} is missing`, expected };
}

function unknownKey(path: (string | number)[], known: readonly string[]): Explained {
  const key = String(path.at(-1));
  const close = nearest(key, known);
  const shown = key.length > 40 ? `${key.slice(0, 37)}...` : key;
  return {
    path,
    key: true,
    message: `${shown} is no key that is known here`,
    expected: known.length > 0 ? listed(known) : undefined,
    hint: close === undefined ? undefined : `did you mean ${close}?`,
  };
}

function wrongKind(
  path: (string | number)[],
  issue: z.core.$ZodIssue,
  schema: z.ZodType,
  input: unknown,
): Explained {
  const discriminator = String((issue as { discriminator?: unknown }).discriminator);
  const inside = path.at(-1) === discriminator ? path.slice(0, -1) : path;
  const kinds = kindsAt(schema, inside, input, discriminator);
  const value = valueAt(input, [...inside, discriminator]);
  const at = [...inside, discriminator];
  if (value === undefined)
    return { path: at, message: `${discriminator} is missing`, expected: listed(kinds) };
  return { path: at, message: `${whatStands(value)}; ${listed(kinds)} is wanted${meant(value, kinds)}` };
}

/** The last key of a path where the mapping around it has none of that name. */
function missingKey(path: readonly (string | number)[], input: unknown): string | undefined {
  const key = path.at(-1);
  if (typeof key !== 'string') return undefined;
  const around = valueAt(input, path.slice(0, -1));
  return isMapping(around) && !Object.hasOwn(around, key) ? key : undefined;
}

function valueAt(input: unknown, path: readonly (string | number)[]): unknown {
  let value = input;
  for (const step of path) {
    if (typeof value !== 'object' || value === null || !Object.hasOwn(value, step)) return undefined;
    value = (value as Record<string | number, unknown>)[step];
  }
  return value;
}

/** The plain schema under what wraps it: optional, default, checks that change its output. */
function bare(schema: z.core.$ZodType): z.core.$ZodType {
  const { def, innerType } = schema._zod as {
    def: { type: string; innerType?: z.core.$ZodType; in?: z.core.$ZodType };
    innerType?: z.core.$ZodType;
  };
  if (def.type === 'lazy' && innerType) return bare(innerType);
  if (def.innerType) return bare(def.innerType);
  if (def.type === 'pipe' && def.in) return bare(def.in);
  return schema;
}

interface Structure {
  shape?: Record<string, z.core.$ZodType>;
  element?: z.core.$ZodType;
  valueType?: z.core.$ZodType;
  items?: z.core.$ZodType[];
  options?: z.core.$ZodType[];
  discriminator?: string;
}

function structure(schema: z.core.$ZodType): Structure {
  return bare(schema)._zod.def as unknown as Structure;
}

/** The options of a union that a value could mean. */
function optionsOf(schema: z.core.$ZodType): z.core.$ZodType[] {
  const { options } = structure(schema);
  return options ? options.flatMap(optionsOf) : [schema];
}

/** Schemas that could hold at a path, as far as the value tells. */
function schemasAt(
  schema: z.core.$ZodType,
  path: readonly (string | number)[],
  input: unknown,
): z.core.$ZodType[] {
  let schemas = fitting(optionsOf(schema), input);
  path.forEach((step, index) => {
    const inside = valueAt(input, path.slice(0, index + 1));
    const next = schemas.flatMap((one) => {
      const { shape, element, valueType, items } = structure(one);
      const child = shape?.[step] ?? element ?? items?.[Number(step)] ?? valueType;
      return child ? optionsOf(child) : [];
    });
    schemas = fitting(next, inside);
  });
  return schemas;
}

/** Of the objects a mapping could mean, those that share the most keys with it. */
function fitting(schemas: z.core.$ZodType[], value: unknown): z.core.$ZodType[] {
  if (!isMapping(value)) return schemas;
  const shared = (schema: z.core.$ZodType) => {
    const { shape } = structure(schema);
    if (!shape) return 0;
    const kinds = Object.entries(shape).filter(([key, child]) => {
      const values = child._zod.values;
      return values?.has(value[key] as string);
    }).length;
    return Object.keys(value).filter((key) => Object.hasOwn(shape, key)).length + 100 * kinds;
  };
  const scores = schemas.map(shared);
  const best = Math.max(0, ...scores);
  return schemas.filter((_, index) => scores[index] === best);
}

function keysAt(schema: z.ZodType, path: readonly (string | number)[], input: unknown): string[] {
  const keys = schemasAt(schema, path, input).flatMap((one) => Object.keys(structure(one).shape ?? {}));
  return [...new Set(keys)];
}

/** The values that a key may take to say which kind of thing a mapping is. */
function kindsAt(
  schema: z.ZodType,
  path: readonly (string | number)[],
  input: unknown,
  discriminator: string,
): string[] {
  const blank = path.length === 0 ? {} : input;
  const kinds = schemasAt(schema, path, blank).flatMap((one) => {
    const child = structure(one).shape?.[discriminator];
    return [...(child?._zod.values ?? [])].map(String);
  });
  return [...new Set(kinds)];
}
