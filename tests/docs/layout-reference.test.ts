import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { layoutReference } from '../../src/build/layout-reference.js';
import { type JsonSchema, layoutJsonSchema } from '../../src/layout/json-schema.js';

const schema = layoutJsonSchema() as JsonSchema;
const written = readFileSync(new URL('../../docs/layout.md', import.meta.url), 'utf8');

/** Every key that a layout may have. */
function* keysOf(tree: unknown): Generator<string> {
  if (typeof tree !== 'object' || tree === null) return;
  for (const [keyword, inner] of Object.entries(tree)) {
    if (keyword === 'properties') yield* Object.keys(inner);
    yield* keysOf(keyword === 'properties' ? Object.values(inner) : inner);
  }
}

it('docs/layout.md is what the schema says; npm run reference writes it', () => {
  expect(written).toBe(layoutReference(schema));
});

it('has every key of the layout', () => {
  for (const key of new Set(keysOf(schema))) expect(written).toMatch(new RegExp(`^\\| \`${key}\``, 'm'));
});

it('has no link that leads nowhere', () => {
  const anchors = [...written.matchAll(/^## (.+)$/gm)].map(([, title]) =>
    title
      .toLowerCase()
      .replace(/[^\w\- ]/g, '')
      .replaceAll(' ', '-'),
  );
  expect(new Set(anchors).size).toBe(anchors.length);
  for (const [, to] of written.matchAll(/\]\(#([^)]+)\)/g)) expect(anchors).toContain(to);
});
