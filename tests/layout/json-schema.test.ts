import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import * as z from 'zod';
import { layoutJsonSchema } from '../../src/layout/json-schema.js';
import { STEP_KEYS } from '../../src/layout/schema/steps.js';
import { ENGINE } from './support.js';

type Json = { [key: string]: Json } & Json[] & string;

const schema = layoutJsonSchema() as unknown as Json;
/** As an editor would use it, which knows nothing of our own schemas. */
const editor = z.fromJSONSchema(layoutJsonSchema() as Parameters<typeof z.fromJSONSchema>[0]);
const accepts = (text: string) => editor.safeParse(parse(text)).success;

describe('the JSON Schema of a layout', () => {
  it('is draft 7 and can be written out', () => {
    expect(schema.$schema).toBe('http://json-schema.org/draft-07/schema#');
    expect(JSON.parse(JSON.stringify(schema))).toEqual(schema);
  });

  it('describes the keys of the document as people write them', () => {
    expect(Object.keys(schema.properties)).toEqual([
      'title',
      'site',
      'engine',
      'staging',
      'throttle',
      'supply',
      'typing',
      'appliance_policy',
      'terrain',
      'surge',
      'lay',
      'progressive',
      'shuttle',
    ]);
    expect(schema.required).toEqual(['engine']);
    expect(schema.properties.site.properties.elevation).toMatchObject({
      type: 'string',
      examples: ['4,300 ft'],
    });
  });

  it('has every kind of step, each with a description', () => {
    const kinds = schema.definitions.steps.items.anyOf as unknown as { title: string; description: string }[];
    expect(kinds.map(({ title }) => title)).toEqual(STEP_KEYS);
    for (const { description } of kinds) expect(description).toBeTruthy();
  });

  it('accepts what we accept, as YAML reads it', () => {
    expect(accepts(ENGINE)).toBe(true);
    const examples = new URL('../../data/examples/', import.meta.url);
    for (const name of readdirSync(examples).filter((file) => /^(?!.*engine).*\.yaml$/.test(file))) {
      expect(accepts(readFileSync(new URL(name, examples), 'utf8')), name).toBe(true);
    }
  });

  it('refuses what is plainly wrong', () => {
    expect(accepts('title: x')).toBe(false);
    expect(accepts(`${ENGINE}\nstagin: parallel`)).toBe(false);
    expect(accepts(`${ENGINE}\nsite: {elevation: 300}`)).toBe(false);
    expect(accepts(`${ENGINE}\nlay: [{hose: trunk}]`)).toBe(false);
    expect(accepts(`${ENGINE}\nlay: [{nozle: fog}]`)).toBe(false);
  });
});
