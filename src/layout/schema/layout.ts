import * as z from 'zod';
import { APPLIANCE_POLICIES, DEFAULT_APPLIANCE_POLICY } from '../../catalogue/schema/appliance.js';
import { PLACE } from '../../catalogue/schema/place.js';
import { text } from '../../catalogue/schema/text.js';
import { typingChoiceSchema, typingClassSchema } from '../../catalogue/schema/typing.js';
import { fromUnit } from '../../quantity/format.js';
import { quantity } from '../../quantity/schema.js';
import { choice, isMapping, listOrMapping, whatStands } from './choice.js';
import { engineOrPath } from './engine.js';
import { progressiveSchema } from './progressive.js';
import { shuttleSchema } from './shuttle.js';
import { stepsSchema, throttlePart } from './steps.js';
import { supplySchema } from './supply.js';

export const STAGINGS = ['parallel', 'series', 'series_reversed', 'a', 'b', 'separate'] as const;

/** Rules by which an engine's power is taken to fall with height and heat. */
export const DERATINGS = ['agricultural', 'sae_j1349', 'none'] as const;

const siteSchema = z.strictObject({
  elevation: quantity('length', { ...PLACE.elevation, example: '4,300 ft' }).default(0),
  air_temperature: quantity('temperature', {
    ...PLACE.airTemperature,
    example: '85 degF',
  }).default(fromUnit(59, 'degF')),
  water_temperature: quantity('temperature', PLACE.waterTemperature).default(fromUnit(60, 'degF')),
  derating: z.enum(DERATINGS).default('agricultural').meta({
    description: 'Rule by which the engines lose power with height and heat',
  }),
});

const throttleSchema = choice(
  [
    throttlePart,
    z.strictObject({ a: throttlePart.optional(), b: throttlePart.optional() }),
    z.strictObject({ discharge_pressure: quantity('pressure', { positive: true, example: '220 psi' }) }),
  ],
  (value) => {
    if (!isMapping(value)) return 0;
    return Object.hasOwn(value, 'a') || Object.hasOwn(value, 'b') ? 1 : 2;
  },
).meta({
  description: 'Part of governed speed, one or each pump its own, or the discharge pressure to hold',
});

const typingSchema = choice([typingChoiceSchema, typingClassSchema], (value) => {
  if (!isMapping(value))
    return `${whatStands(value)}; { scheme: nwcg, class: engine-3 } is wanted, or { custom: ... }`;
  const choosing = ['scheme', 'class', 'custom'].some((key) => Object.hasOwn(value, key));
  return choosing || !(Object.hasOwn(value, 'flow') || Object.hasOwn(value, 'points')) ? 0 : 1;
}).meta({ description: 'What the agency asks of the engine' });

const point = z.tuple([
  quantity('length', { atLeast: 0, example: '400 ft', description: 'Distance along the ground' }),
  quantity('length', { example: '90 ft', description: 'Height' }),
]);

const points = z.array(point).min(2, 'a slope needs at least two points: [[0 ft, 0 ft], [400 ft, 90 ft]]');

const grade = quantity('ratio', {
  example: '30 %',
  description: 'One grade all the way: height gained over level distance; a fall is negative',
}).transform((ratio) => ({ grade: ratio }));

const TERRAIN_WANTED =
  'points of distance and height are wanted, { on_map: [...] } for distances off a map, or a grade such as 30 %';

/** Distances lie along the ground, as hose does, unless they are said to be off a map. */
export const terrainSchema = choice(
  [
    points.transform((given) => ({ along_slope: given })),
    z.strictObject({ along_slope: points }),
    z.strictObject({ on_map: points }),
    grade,
  ],
  (value) => {
    if (Array.isArray(value)) return 0;
    if (typeof value === 'string') return 3;
    if (!isMapping(value)) return `${whatStands(value)}; ${TERRAIN_WANTED}`;
    if (Object.hasOwn(value, 'along_slope')) return 1;
    return Object.hasOwn(value, 'on_map') ? 2 : `a mapping of something else stands here; ${TERRAIN_WANTED}`;
  },
).meta({
  description:
    'Distance against height from the engine on: along the ground, or on_map for distances off a map; or one grade',
});

const surgeSchema = z
  .strictObject({
    wave_speed: quantity('velocity', { positive: true, example: '200 m/s' })
      .optional()
      .meta({ description: 'Speed of a pressure wave in the hose, as measured' }),
    closing_time: quantity('time', { positive: true, example: '0.5 s' })
      .optional()
      .meta({ description: 'Time in which a nozzle is shut; slammed unless given' }),
  })
  .meta({ description: 'What the surge of a nozzle that is shut is worked out from' });

const laySchema = listOrMapping(
  stepsSchema,
  z.record(z.string(), stepsSchema),
  'a list of steps is wanted, or a mapping from outlet to steps',
).meta({ description: "The hose on the ground, from the engine's outlet, or outlet by outlet" });

export const layoutSchema = z
  .strictObject({
    title: text.optional().meta({ description: 'What the report is headed with' }),
    site: siteSchema.prefault({}),
    engine: engineOrPath,
    staging: z.enum(STAGINGS).optional().meta({ description: 'How the two pumps work together' }),
    throttle: throttleSchema.optional(),
    supply: supplySchema.default('tank'),
    typing: typingSchema.optional(),
    appliance_policy: z
      .enum(APPLIANCE_POLICIES)
      .default(DEFAULT_APPLIANCE_POLICY)
      .meta({ description: "Which of the trade's rules an appliance costs by" }),
    terrain: terrainSchema.optional(),
    surge: surgeSchema.optional(),
    lay: laySchema.default([]),
    progressive: progressiveSchema.optional(),
    shuttle: shuttleSchema.optional(),
  })
  .meta({
    title: 'layout',
    description: 'The site, the engine, what is asked of it, and the hose on the ground',
  });

export type LayoutDocument = z.output<typeof layoutSchema>;
