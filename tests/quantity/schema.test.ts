import { describe, expect, it } from 'vitest';
import * as z from 'zod';
import { quantity } from '../../src/quantity/schema.js';

const messages = (schema: z.ZodType, input: unknown) =>
  schema.safeParse(input).error?.issues.map((issue) => `${issue.path.join('.')}: ${issue.message}`);

describe('the schema of a quantity', () => {
  const schema = z.strictObject({
    length: quantity('length', { positive: true, description: 'how much of it' }),
    open: quantity('ratio', { atLeast: 0, atMost: 1 }).optional(),
    bore: quantity('length', { unit: 'in' }).optional(),
  });

  it('turns text into SI', () => {
    expect(schema.parse({ length: '100 ft', open: '60 %' })).toEqual({
      length: expect.closeTo(30.48, 12),
      open: 0.6,
    });
  });

  it('fails in the sentences of the reader', () => {
    expect(messages(schema, { length: 300, open: '120 %', bore: '2 psi' })).toEqual([
      'length: 300 has no unit: did you mean 300 ft? (in, mi, m, mm, cm, km would do as well)',
      'open: 120 % is too large: at most 100 % is wanted',
      'bore: 2 psi is a pressure; a length is wanted, for instance 1.5 in',
    ]);
    expect(messages(schema, { length: '-3 ft', open: '-1 %' })).toEqual([
      'length: -3 ft must be more than zero',
      'open: -1 % is too small: at least 0 % is wanted',
    ]);
    expect(messages(schema, { length: '0 ft' })).toEqual(['length: 0 ft must be more than zero']);
    expect(messages(schema, {})).toEqual([
      'length: nothing stands here; a length is wanted, for instance 300 ft',
    ]);
  });

  it('describes its input to an editor', () => {
    const json = z.toJSONSchema(schema, { target: 'draft-07', io: 'input' });
    expect(json.properties?.length).toEqual({
      type: 'string',
      description: 'how much of it',
      dimension: 'length',
      examples: ['300 ft'],
    });
    expect(json.required).toEqual(['length']);
  });

  it('is made once for the same wishes', () => {
    expect(quantity('flow', { positive: true })).toBe(quantity('flow', { positive: true }));
    expect(quantity('flow')).not.toBe(quantity('flow', { positive: true }));
  });
});
