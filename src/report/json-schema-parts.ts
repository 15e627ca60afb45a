import * as z from 'zod';

export const quantityJson = (what: string) =>
  z.strictObject({ value: z.number(), unit: z.string() }).meta({ description: what });

export const maybe = (what: string) => quantityJson(what).nullable();

export const stagingName = z.enum(['parallel', 'series', 'series_reversed', 'a', 'b', 'separate']).meta({
  description: 'How the two pumps are staged; a and b are one pump alone.',
});

export const verdict = z.enum(['meets', 'falls_short']);
