import * as z from 'zod';
import { SHARP_ORIFICE_COEFFICIENT } from '../../physics/nozzle/sharp-orifice.js';
import { quantity } from '../../quantity/schema.js';
import { across } from './bore.js';
import { exactlyOne } from './exclusive.js';
import { LEAST_COEFFICIENT } from './nozzle.js';
import { description, source, text } from './text.js';

const ratingKeys = {
  net: z.boolean().optional().meta({
    description: 'Whether the pressure is discharge less intake, rather than the gauge at the outlet',
  }),
  lift: quantity('length', { atLeast: 0 })
    .optional()
    .meta({ description: 'Suction lift that the point is rated at' }),
};
const flow = quantity('flow', { positive: true });
const pressure = quantity('pressure', { positive: true });

const pointSchema = z.lazy(() =>
  z.strictObject({
    name: text.optional(),
    flow,
    pressure: pressure.optional().meta({ description: 'Left out where the scheme publishes none' }),
    ...ratingKeys,
  }),
);

const grades = () =>
  z
    .array(z.strictObject({ grade: text, from: pressure }))
    .min(1)
    .superRefine((rows, context) => {
      for (let i = 1; i < rows.length; i++)
        if (rows[i].from >= rows[i - 1].from)
          context.addIssue({
            code: 'custom',
            path: [i, 'from'],
            message: 'grades are wanted from best to least',
          });
    });

const testOrificeSchema = z.lazy(() =>
  z.strictObject({
    kind: z
      .enum(['sharp_orifice', 'smooth_bore'])
      .default('sharp_orifice')
      .meta({ description: 'What the bore is: a sharp-edged plate or a nozzle' }),
    bore: across,
    tee_bore: across.optional().meta({ description: 'Bore of the tee upstream whose gauge is read' }),
    discharge_coefficient: z
      .number()
      .min(LEAST_COEFFICIENT)
      .max(1)
      .default(SHARP_ORIFICE_COEFFICIENT)
      .meta({
        description: 'Part of the ideal flow; unless given that of the agency: 0.62 with the constant 29.9',
      }),
    passes: pressure.meta({ description: 'Reading from which the pump passes' }),
    grades: grades().optional().meta({ description: 'Named grades by reading, from best to least' }),
    source: source.optional(),
  }),
);

const hoseSchema = () =>
  z.strictObject({
    nominal: across,
    length: quantity('length', { positive: true }),
  });

const notCheckedSchema = () =>
  z.strictObject({
    item: text,
    requirement: text,
    source: text.optional(),
  });

export const typingClassSchema = z.lazy(() =>
  z
    .strictObject({
      ...description,
      flow: flow.optional(),
      pressure: pressure.optional(),
      ...ratingKeys,
      points: z
        .array(pointSchema)
        .min(1)
        .optional()
        .meta({ description: 'Where there is more than one rating point' }),
      test_orifice: testOrificeSchema
        .optional()
        .meta({ description: 'The bore that the agency loads the pump with, and the reading that passes' }),
      tank: quantity('volume', { positive: true }).optional().meta({ description: 'Least water carried' }),
      hose: z.array(hoseSchema()).optional().meta({ description: 'Least hose carried, by nominal size' }),
      crew: z.int().positive().optional().meta({ description: 'Least crew' }),
      gross_weight_maximum: quantity('mass', { positive: true })
        .optional()
        .meta({ description: 'Highest gross vehicle weight rating' }),
      gross_weight_minimum: quantity('mass', { positive: true })
        .optional()
        .meta({ description: 'Least gross vehicle weight rating' }),
      gross_weight_above: quantity('mass', { positive: true })
        .optional()
        .meta({ description: 'Gross vehicle weight rating that has to be passed' }),
      not_checked: z
        .array(notCheckedSchema())
        .optional()
        .meta({ description: 'Requirements that no sum can decide; a report lists them' }),
    })
    .check(exactlyOne(['flow', 'points'], 'what the pump must make'))
    .meta({ title: 'typing class' }),
);

export type TypingClass = z.infer<typeof typingClassSchema>;
export type TypingPoint = z.infer<typeof pointSchema>;
export type TypingTestOrifice = z.infer<typeof testOrificeSchema>;

/** A table of an agency or standard: its classes by id, one edition of it. */
export const typingSchema = z.lazy(() =>
  z
    .strictObject({
      title: text,
      agency: text,
      edition: text,
      date: text.meta({ description: 'When the edition is from, or was read' }),
      note: text.optional(),
      superseded_by: text.optional().meta({ description: 'What has replaced this edition' }),
      source,
      classes: z.record(z.string(), typingClassSchema),
    })
    .meta({ title: 'typing' }),
);

export type Typing = z.infer<typeof typingSchema>;

/** The points that a class asks for, one or several. */
export function typingPoints(typing: TypingClass): TypingPoint[] {
  if (typing.points) return typing.points;
  if (typing.flow === undefined) throw new TypeError('a typing class without a flow passed its schema');
  return [{ flow: typing.flow, pressure: typing.pressure, net: typing.net, lift: typing.lift }];
}

/** How a layout says what is asked of it: a class of the catalogue's, or a mapping of its own under `custom`. */
export const typingChoiceSchema = z
  .strictObject({
    scheme: text.optional().meta({ description: 'Table: nwcg, rating, en-1028' }),
    class: text.optional().meta({ description: 'Class in that table: engine-3' }),
    pressure: pressure
      .optional()
      .meta({ description: 'Pressure to judge by where the table publishes none' }),
    custom: typingClassSchema.optional(),
  })
  .check(exactlyOne(['scheme', 'custom'], 'the typing'))
  .superRefine((choice, context) => {
    if (choice.scheme !== undefined && choice.class === undefined)
      context.addIssue({ code: 'custom', path: [], message: 'class is wanted: which class of the table' });
    if (choice.custom !== undefined && choice.class !== undefined)
      context.addIssue({ code: 'custom', path: ['class'], message: 'custom stands alone, without a class' });
    if (choice.custom !== undefined && choice.pressure !== undefined)
      context.addIssue({
        code: 'custom',
        path: ['pressure'],
        message: 'the pressure is wanted within custom',
      });
  })
  .meta({ title: 'typing choice' });
