import * as z from 'zod';

/** A line of text that says something. */
export const text = z.string().trim().min(1, 'some text is wanted');

/** Where the values of a part come from: one text for all of them, or key by key (`limits.burst` for a key within a key). */
export const source = z.union([text, z.record(z.string(), text)], {
  error: 'text is wanted, or a mapping from key to text',
});

export type Source = z.infer<typeof source>;

/** Keys that every part may have: they say what it is and where its values come from, and no law reads them. */
export const description = {
  name: text.optional(),
  note: text.optional().meta({ description: 'Anything worth knowing that no law reads' }),
  source: source.optional().meta({ description: 'Where the values come from, in one text or key by key' }),
};
