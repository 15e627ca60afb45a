import * as z from 'zod';
import { HOSE_SIZES } from './rule-set.js';

const source = z.string().min(1);
const positive = z.number().positive();
const amount = z.number().min(0);
const span = { from_flow: positive.optional(), to_flow: positive.optional(), source };

const hoses = <T extends z.ZodRawShape>(shape: T) =>
  z.partialRecord(z.enum(HOSE_SIZES), z.strictObject({ ...shape, ...span }));

const friction = z.discriminatedUnion('method', [
  z.strictObject({ method: z.literal('coefficient'), hoses: hoses({ coefficient: positive }) }),
  z.strictObject({ method: z.literal('condensed_q'), hoses: hoses({ divisor: positive }) }),
  z.strictObject({ method: z.literal('drop_ten'), hoses: hoses({}) }),
  z.strictObject({ method: z.literal('tenths'), hoses: hoses({ factor: positive }) }),
  z.strictObject({ method: z.literal('old_square'), hoses: hoses({ share: positive }) }),
  z.strictObject({
    method: z.literal('table'),
    hoses: hoses({ table: z.array(z.tuple([positive, positive])).min(2) }),
  }),
]);

const appliance = z.discriminatedUnion('policy', [
  z.strictObject({ policy: z.literal('none'), source }),
  z.strictObject({ policy: z.literal('each'), each: amount, source }),
  z.strictObject({
    policy: z.literal('by_flow'),
    from_flow: positive,
    below: amount,
    each: amount,
    master: amount,
    source,
  }),
]);

/** Every figure that rules in one system of units need. */
export const unitRulesSchema = z.strictObject({
  friction,
  elevation: z.strictObject({ rate: positive, source }),
  storey: z.strictObject({ loss: amount, source }),
  appliance,
  nozzle: z.strictObject({ smooth_hand: positive, smooth_master: positive, fog: positive, source }),
  smooth_bore: z.strictObject({ constant: positive, source }),
  reaction: z.strictObject({ smooth: positive, fog: positive, source }),
  draft: z.strictObject({
    feet_per_psi: positive,
    length_per_vacuum: positive,
    atmosphere: positive,
    atmosphere_loss_per_1000: positive,
    lift_loss_per_1000: positive,
    attainable: positive.max(1),
    source,
  }),
  relay: z.strictObject({ residual: amount, source }),
  water: z.strictObject({ mass: positive, per_cubic: positive, source }),
  tank: z.strictObject({ reserve: amount.max(0.9), source }),
  shuttle: z.strictObject({ usable: positive.max(1), fixed: amount, per_distance: positive, source }),
  rounding: z.strictObject({ pump_pressure: amount, source }),
  tolerance: z.strictObject({ pressure: positive, relative: positive.max(0.2), source }),
});

export const ruleSetSchema = z.strictObject({
  name: z.string().regex(/^[a-z0-9-]+$/, 'a name of small letters, digits and hyphens'),
  title: z.string().min(1),
  source,
  us: unitRulesSchema.optional(),
  si: unitRulesSchema.optional(),
});
