import * as z from 'zod';
import { across } from '../../catalogue/schema/bore.js';
import { hoseSchema } from '../../catalogue/schema/hose.js';
import { LEAST_COEFFICIENT } from '../../catalogue/schema/nozzle.js';
import { pumpSchema } from '../../catalogue/schema/pump.js';
import { dateText, price, text } from '../../catalogue/schema/text.js';
import { quantity } from '../../quantity/schema.js';
import { choice, isMapping, listOrMapping, textOrMapping, whatStands } from './choice.js';
import { idOr, stepsSchema, wholeNumber } from './steps.js';

/** How much of its head a pump may have lost and still be one; common practice, no source. */
const MOST_WEAR = 0.9;

/** No tank that an engine lives on stands higher over its pumps, or is deeper, m (98 ft); common practice, no source. */
const HIGHEST_TANK = 30;
/** Longest wheelbase, and furthest that a weight sits from where places are told from, m (98 ft); common practice, no source. */
const LONGEST_TRUCK = 30;
const SHORTEST_TRUCK = 0.5;

/** Where a weight sits; a datum of the front axle and the middle of the truck. */
const position = {
  behind_front_axle: quantity('length', { atLeast: -LONGEST_TRUCK, atMost: LONGEST_TRUCK, example: '10 ft' })
    .optional()
    .meta({ description: 'How far behind the front axle it sits' }),
  left_of_middle: quantity('length', { atLeast: -LONGEST_TRUCK, atMost: LONGEST_TRUCK, example: '6 in' })
    .optional()
    .meta({ description: 'How far left of the middle it sits; right of it below 0' }),
};

const servicedSchema = z.strictObject({
  at: quantity('time', { atLeast: 0, example: '150 h', description: 'Running hours then' }).optional(),
  on: dateText.optional().meta({ description: 'Day of it' }),
});

const enginePump = z.strictObject({
  model: idOr('pump', pumpSchema).meta({ description: 'Pump of the catalogue, or its curve and limits' }),
  wear: quantity('ratio', {
    atLeast: 0,
    atMost: MOST_WEAR,
    example: '3 %',
    description: 'Head lost since the curve',
  }).default(0),
  hours: quantity('time', { atLeast: 0, example: '212 h', description: 'Running hours' }).optional(),
  fuel_tank: quantity('volume', {
    positive: true,
    example: '5 gal',
    description: 'Fuel on board for it',
  }).optional(),
  serviced: z
    .record(z.string(), servicedSchema)
    .optional()
    .meta({ description: 'When each service of the pump was last done, by its name' }),
  ...position,
});

const eachPump = listOrMapping(
  stepsSchema,
  z.strictObject({ a: stepsSchema.optional(), b: stepsSchema.optional() }),
  'a list of steps is wanted, or { a: [...], b: [...] }',
);

const coolingSchema = z.strictObject({
  orifice: across.meta({ description: 'Bore of the line back to the tank' }),
  discharge_coefficient: z
    .number({ error: 'a bare number is wanted: part of the ideal flow' })
    .min(LEAST_COEFFICIENT, 'a part of the ideal flow is wanted, at least 0.01')
    .max(1)
    .optional(),
  at: z.enum(['pump', 'discharge', 'manifold']).default('pump').meta({
    description:
      'Where it leaves: between each pump and its own check valve, behind that valve, or one for both at the manifold',
  }),
  state: z.enum(['open', 'shut']).default('open').meta({ description: 'Whether its valve is open' }),
});

const plumbingSchema = z.strictObject({
  intake: stepsSchema.optional().meta({ description: 'From the tank to where the suctions part' }),
  suction: eachPump.optional().meta({ description: "Each pump's own suction" }),
  discharge: eachPump.optional().meta({ description: "Each pump's own discharge, with its check valve" }),
  transfer: stepsSchema
    .optional()
    .meta({ description: "First pump's discharge to second pump's inlet, in series" }),
  manifold: stepsSchema.optional().meta({ description: 'From where the discharges meet to the outlet' }),
  cooling: coolingSchema
    .optional()
    .meta({ description: 'Line back to the tank that keeps each pump from boiling its water' }),
});

const outletSchema = listOrMapping(
  stepsSchema,
  z.strictObject({ pump: z.enum(['a', 'b']).optional(), steps: stepsSchema.optional() }),
  'a list of steps is wanted, or { pump: a, steps: [...] }',
);

const weightSchema = textOrMapping(
  quantity('mass', { atLeast: 0, example: '11,900 lb' }),
  z.strictObject({
    weight: quantity('mass', { atLeast: 0, example: '750 lb' }),
    ...position,
  }),
);

export const engineSchema = z
  .strictObject({
    name: text.default('Engine').meta({ description: 'What the report calls it' }),
    tank: z
      .strictObject({
        capacity: quantity('volume', { positive: true, example: '500 gal' }),
        outlet_height: quantity('length', {
          atLeast: -HIGHEST_TANK,
          atMost: HIGHEST_TANK,
          example: '1 ft',
          description: 'Water surface above the pump inlets when full',
        }).default(0),
        depth: quantity('length', {
          positive: true,
          atMost: HIGHEST_TANK,
          example: '3 ft',
          description:
            'How far the surface falls from full to empty; to the height of the inlets unless given',
        }).optional(),
        ...position,
      })
      .optional(),
    one_larger_pump: z
      .strictObject({
        name: text.optional(),
        weight: quantity('mass', { positive: true }).optional(),
        burn: quantity('flow', { positive: true }).optional(),
        price: price.optional(),
      })
      .optional(),
    pumps: z.strictObject({ a: enginePump, b: enginePump.optional() }),
    plumbing: plumbingSchema.optional(),
    relief: z
      .strictObject({
        opens_at: quantity('pressure', { positive: true, example: '400 psi' }),
        overpressure: quantity('ratio', {
          positive: true,
          atMost: 1,
          example: '10 %',
          description: 'How far over its setting the valve is fully lifted',
        }).optional(),
        at: z.enum(['manifold', 'pump']).default('manifold').meta({
          description:
            'Where it stands: one where the discharges meet, or one for each pump between it and its check valve',
        }),
        bore: across.optional().meta({ description: 'Bore of the valve, which tells what it passes' }),
        flow: quantity('flow', {
          positive: true,
          example: '100 gpm',
          description: 'What it passes fully lifted at that pressure; stands before what its bore tells',
        }).optional(),
      })
      .optional()
      .meta({ description: 'Relief valve back to the tank' }),
    outlets: z
      .record(z.string(), outletSchema)
      .optional()
      .meta({ description: 'Plumbing beyond the manifold, by the name of the outlet' }),
    hose_carried: z
      .array(
        z.strictObject({ hose: idOr('hose', hoseSchema), length: quantity('length', { positive: true }) }),
      )
      .optional(),
    fittings_carried: z
      .record(z.string(), wholeNumber(0, 1000))
      .optional()
      .meta({ description: 'How many of each branch, nozzle or appliance of the catalogue are carried' }),
    crew: z
      .int({ error: (issue) => `${whatStands(issue.input)}; a whole number of people is wanted` })
      .min(0)
      .optional(),
    gross_weight_rating: quantity('mass', { positive: true, example: '26,000 lb' }).optional(),
    wheelbase: quantity('length', {
      positive: true,
      atLeast: SHORTEST_TRUCK,
      atMost: LONGEST_TRUCK,
      example: '15 ft',
      description: 'From the front axle to the rear one, or to the middle of a rear pair',
    }).optional(),
    axle_ratings: z
      .strictObject({
        front: quantity('mass', { positive: true, example: '10,000 lb' }).optional(),
        rear: quantity('mass', { positive: true, example: '18,000 lb' }).optional(),
      })
      .optional(),
    weights: z
      .record(z.string(), weightSchema)
      .optional()
      .meta({ description: 'What each part of the truck weighs, without its water' }),
  })
  .meta({ id: 'engine', title: 'engine' });

export type EngineDocument = z.output<typeof engineSchema>;

/** The engine, or the path of its file. */
export const engineOrPath = choice(
  [text.meta({ description: "Path of the engine's file, from this one" }), engineSchema],
  (value) => {
    if (typeof value === 'string') return 0;
    return isMapping(value) ? 1 : `${whatStands(value)}; the path of an engine's file or a mapping is wanted`;
  },
);
