import { describe, expect, it } from 'vitest';
import { engineJsonSchema, type JsonSchema, layoutJsonSchema } from '../../src/layout/json-schema.js';
import { KEY_WORDS } from '../../src/layout/json-schema-words.js';

/** Every key of a schema with the path to it. */
function* keysOf(tree: unknown, path: string[] = []): Generator<[string, JsonSchema]> {
  if (typeof tree !== 'object' || tree === null) return;
  for (const [keyword, inner] of Object.entries(tree)) {
    if (keyword === 'properties')
      for (const [key, property] of Object.entries(inner as Record<string, JsonSchema>)) {
        yield [[...path, key].join('/'), property];
        yield* keysOf(property, [...path, key]);
      }
    else yield* keysOf(inner, path);
  }
}

const SCHEMAS = { layout: layoutJsonSchema(), engine: engineJsonSchema() };

describe.each(Object.entries(SCHEMAS))('the JSON Schema of the %s', (_, schema) => {
  const keys = [...keysOf(schema)];

  it('says of every key what it means', () => {
    expect(keys.length).toBeGreaterThan(100);
    expect(keys.filter(([, { description, $ref }]) => !description && !$ref).map(([path]) => path)).toEqual(
      [],
    );
  });

  it('says of every quantity in which units it is written', () => {
    const quantities = keys.filter(([, { description }]) => /with its unit/.test(description ?? ''));
    expect(quantities.length).toBeGreaterThan(50);
    for (const [path, { description = '' }] of quantities) {
      expect(description, path).toMatch(/with its unit \(.+\), for instance .+/);
      expect(description, path).toMatch(/^.+\. A/);
    }
  });

  it('keeps nothing of what it was made from', () => {
    expect(JSON.stringify(schema)).not.toMatch(/"dimension":"|"kind":"/);
  });
});

it('the words are of keys that there are', () => {
  const last = new Set(
    Object.values(SCHEMAS)
      .flatMap((schema) => [...keysOf(schema)])
      .map(([path]) => path.split('/').at(-1)),
  );
  for (const name of Object.keys(KEY_WORDS)) expect(last, name).toContain(name.split('.').at(-1));
});
