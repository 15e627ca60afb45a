import * as z from 'zod';
import { KINDS, type Kind } from '../catalogue/kind.js';
import { type Catalogue, loadCatalogue } from '../catalogue/load.js';
import type { Dimension } from '../quantity/dimension.js';
import { KINDS as QUANTITIES } from '../quantity/parse.js';
import { unitsOf } from '../quantity/units.js';
import { KEY_WORDS } from './json-schema-words.js';
import { engineSchema } from './schema/engine.js';
import { layoutSchema } from './schema/layout.js';

/** A JSON Schema as a tree that can be walked. */
export interface JsonSchema {
  [keyword: string]: unknown;
  title?: string;
  description?: string;
  examples?: unknown[];
  properties?: Record<string, JsonSchema>;
}

/** The layout document as a JSON Schema (draft 7), which YAML editors check, complete and explain by. */
export function layoutJsonSchema(catalogue: Catalogue = loadCatalogue()): z.core.JSONSchema.BaseSchema {
  return told(layoutSchema, catalogue);
}

/** The same of an engine that stands in a file of its own. */
export function engineJsonSchema(catalogue: Catalogue = loadCatalogue()): z.core.JSONSchema.BaseSchema {
  return told(engineSchema, catalogue);
}

function told(schema: z.ZodType, catalogue: Catalogue): z.core.JSONSchema.BaseSchema {
  const tree = z.toJSONSchema(schema, { target: 'draft-07', io: 'input' });
  tell(tree as JsonSchema, [], catalogue);
  return tree;
}

const isTree = (value: unknown): value is JsonSchema => typeof value === 'object' && value !== null;

/** Fills in, from the top down, what the schemas leave unsaid; `around` are the keys that a place is within. */
function tell(tree: JsonSchema, around: readonly string[], catalogue: Catalogue): void {
  if (Array.isArray(tree)) {
    for (const one of tree) tell(one as JsonSchema, around, catalogue);
    return;
  }
  tellUnits(tree);
  tellIds(tree, around, catalogue);
  for (const [key, inner] of Object.entries(tree)) {
    if (!isTree(inner) || key === 'examples') continue;
    if (key === 'properties') tellProperties(inner as Record<string, JsonSchema>, around, tree, catalogue);
    else if (key === 'definitions')
      for (const [name, one] of Object.entries(inner)) tell(one as JsonSchema, [name], catalogue);
    else tell(inner, around, catalogue);
  }
}

function tellProperties(
  properties: Record<string, JsonSchema>,
  around: readonly string[],
  { title }: JsonSchema,
  catalogue: Catalogue,
): void {
  for (const [key, property] of Object.entries(properties)) {
    const within = [title, around.at(-1)].flatMap((name) => (name === undefined ? [] : [`${name}.${key}`]));
    const words = [...within, key].map((name) => KEY_WORDS[name]).find((found) => found !== undefined);
    if (words !== undefined && saysNothing(property)) property.description = words;
    tell(property, [...around, key], catalogue);
  }
}

/** Whether a property says no more than what kind of quantity it is. */
function saysNothing({ description, dimension }: JsonSchema): boolean {
  if (description === undefined) return true;
  return (
    dimension !== undefined && description === `${QUANTITIES[dimension as Dimension].name}, with its unit`
  );
}

/** A quantity says the units that it may be written in. */
function tellUnits(tree: JsonSchema): void {
  const { dimension, description, examples } = tree;
  if (typeof dimension !== 'string') return;
  const kind = dimension as Dimension;
  const { name } = QUANTITIES[kind];
  const generic = `${name}, with its unit`;
  const meaning = description === undefined || description === generic ? '' : `${description}. `;
  const example = examples?.[0] === undefined ? '' : `, for instance ${examples[0]}`;
  const written = `${name.charAt(0).toUpperCase()}${name.slice(1)} with its unit (${unitsOf(kind).join(', ')})${example}`;
  tree.description = `${meaning}${written}`;
  delete tree.dimension;
  // It is in SI, and an editor would write it as a bare number.
  delete tree.default;
}

/** An id offers those of the catalogue. */
function tellIds(tree: JsonSchema, around: readonly string[], catalogue: Catalogue): void {
  const { kind } = tree;
  if (typeof kind === 'string' && tree.type === 'string') {
    const known = KINDS.find((one) => one === kind.replace(' ', '_'));
    if (known) tree.examples = catalogue.ids(known);
    delete tree.kind;
  }
  if (tree.type !== 'string' || around.at(-2) !== 'typing') return;
  if (around.at(-1) === 'scheme') tree.examples = catalogue.ids('typing');
  if (around.at(-1) === 'class') tree.examples = classesOf(catalogue);
}

function classesOf(catalogue: Catalogue): string[] {
  const kind: Kind = 'typing';
  const classes = catalogue.ids(kind).flatMap((id) => Object.keys(catalogue.find(kind, id)?.classes ?? {}));
  return [...new Set(classes)];
}
