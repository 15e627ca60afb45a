import * as z from 'zod';

/** A line of text that says something. */
export const text = z.string().trim().min(1, 'some text is wanted');

/** Where the values of a part come from: one text for all of them, or key by key (`limits.burst` for a key within a key). */
export const source = z.union([text, z.record(z.string(), text)], {
  error: 'text is wanted, or a mapping from key to text',
});

/** A day as the calendar has it. */
export const dateText = z
  .string({ error: 'a day is wanted as year, month and day: 2026-05-01' })
  .trim()
  .refine(
    (day) => /^\d{4}-\d\d-\d\d$/.test(day) && isDay(day),
    'a day is wanted as year, month and day: 2026-05-01',
  );

function isDay(text: string): boolean {
  const time = Date.parse(`${text}T00:00:00Z`);
  return Number.isFinite(time) && new Date(time).toISOString().startsWith(text);
}

/** What something costs, in whatever money the file keeps its accounts in. */
export const price = z.number({ error: 'a bare number is wanted: what it costs' }).min(0);

export type Source = z.infer<typeof source>;

/** Keys that every part may have: they say what it is and where its values come from, and no law reads them. */
export const description = {
  name: text.optional(),
  note: text.optional().meta({ description: 'Anything worth knowing that no law reads' }),
  source: source.optional().meta({ description: 'Where the values come from, in one text or key by key' }),
};
