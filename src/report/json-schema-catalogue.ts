import * as z from 'zod';
import { KINDS } from '../catalogue/kind.js';
import { quantityJson } from './json-schema-parts.js';

/** The shape of `catalogue --json`. */

export type FigureJson =
  | { value: number; unit: string }
  | number
  | string
  | boolean
  | FigureJson[]
  | { [key: string]: FigureJson };

const figureValue: z.ZodType<FigureJson> = z.lazy(() =>
  z.union([
    quantityJson('In the units of the answer.'),
    z.number(),
    z.string(),
    z.boolean(),
    z.array(figureValue),
    z.record(z.string(), figureValue),
  ]),
);

const kind = z.enum(KINDS).meta({ description: 'Kind of the catalogue.' });

export const catalogueJson = z
  .strictObject({
    format: z.literal(1),
    question: z.literal('catalogue'),
    kinds: z
      .array(
        z.strictObject({
          kind,
          about: z.string().meta({ description: 'What it is, and where a layout takes it.' }),
          count: z.int().meta({ description: 'Rows of it, typing tables counted once.' }),
        }),
      )
      .meta({ description: 'All that there are.' }),
    entries: z
      .array(
        z.strictObject({
          kind,
          id: z.string().meta({ description: 'What a layout writes.' }),
          scheme: z.string().nullable().meta({ description: 'Table of a typing class.' }),
          name: z.string().nullable(),
          note: z.string().nullable(),
          figures: z.array(
            z.strictObject({
              key: z.string().meta({ description: 'Key of the row, limits.burst for one within another.' }),
              written: z.string().meta({ description: 'In the units that its source prints.' }),
              value: figureValue.meta({ description: 'The same in the units of the answer.' }),
              source: z.string().nullable().meta({ description: 'Document and section; null for words.' }),
            }),
          ),
        }),
      )
      .meta({ description: 'Rows that were asked for; none where only the kinds were.' }),
  })
  .meta({ title: 'catalogue', description: 'What may stand in a layout, as `catalogue --json` prints it.' });

export type CatalogueJson = z.infer<typeof catalogueJson>;
