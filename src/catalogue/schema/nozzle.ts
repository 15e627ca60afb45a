import * as z from 'zod';
import { SHARP_ORIFICE_COEFFICIENT } from '../../physics/nozzle/sharp-orifice.js';
import { quantity } from '../../quantity/schema.js';
import { across } from './bore.js';
import { exactlyOne } from './exclusive.js';
import { description } from './text.js';

/** Discharge coefficient of a smooth bore that gives the trade's 29.7 in gpm = 29.7 d^2 sqrt(psi). */
export const SMOOTH_BORE_COEFFICIENT = 0.995;

/** Least part of the ideal flow that an opening passes; common practice, no source. */
export const LEAST_COEFFICIENT = 0.01;
/** Least flow that a nozzle is rated for, m3/s (0.016 gpm), and least pressure, Pa (0.15 psi); common practice, no source. */
export const LEAST_FLOW = 1e-6;
export const LEAST_PRESSURE = 1e3;

const pressure = quantity('pressure', { positive: true, atLeast: LEAST_PRESSURE });
const flow = quantity('flow', { positive: true, atLeast: LEAST_FLOW });
const coefficient = z
  .number({ error: 'a bare number is wanted: part of the ideal flow' })
  .min(LEAST_COEFFICIENT, 'a part of the ideal flow is wanted, at least 0.01')
  .max(1, 'a part of the ideal flow is wanted, at most 1');

const shared = {
  ...description,
  working: z
    .strictObject({ from: pressure.optional(), to: pressure.optional() })
    .optional()
    .meta({ description: 'Range of nozzle pressure that it works in' }),
  weight: quantity('mass', { positive: true }).optional(),
};

const smoothBore = () =>
  z
    .strictObject({
      kind: z.literal('smooth_bore'),
      ...shared,
      bore: across.optional(),
      tips: z
        .array(across)
        .min(1)
        .optional()
        .meta({ description: 'Bores to choose from; the first holds where a step names no tip' }),
      discharge_coefficient: coefficient.default(SMOOTH_BORE_COEFFICIENT),
    })
    .check(exactlyOne(['bore', 'tips'], 'the bore'));

const fog = () =>
  z.strictObject({
    kind: z.literal('fog'),
    ...shared,
    flow: flow.meta({ description: 'Rated flow' }),
    pressure: pressure.meta({ description: 'Nozzle pressure at which it gives its rated flow' }),
  });

const automatic = () =>
  z
    .strictObject({
      kind: z.literal('automatic'),
      ...shared,
      pressure: pressure.meta({ description: 'Nozzle pressure that it holds' }),
      flow_from: flow.meta({ description: 'Flow below which it can no longer hold its pressure' }),
      flow_to: flow.meta({ description: 'Flow above which it stands wide open' }),
    })
    .refine((nozzle) => nozzle.flow_to > nozzle.flow_from, {
      path: ['flow_to'],
      error: 'more is wanted than flow_from',
    });

const sharpOrifice = () =>
  z
    .strictObject({
      kind: z.literal('sharp_orifice'),
      ...shared,
      bore: across,
      tee_bore: across.optional().meta({ description: 'Bore of the tee upstream whose gauge is read' }),
      discharge_coefficient: coefficient.default(SHARP_ORIFICE_COEFFICIENT),
    })
    .refine((nozzle) => nozzle.tee_bore === undefined || nozzle.tee_bore > nozzle.bore, {
      path: ['tee_bore'],
      error: 'more is wanted than the bore of the orifice',
    });

export const nozzleSchema = z.lazy(() =>
  z.discriminatedUnion('kind', [smoothBore(), fog(), automatic(), sharpOrifice()]).meta({ title: 'nozzle' }),
);

export type Nozzle = z.infer<typeof nozzleSchema>;
export type SmoothBore = Extract<Nozzle, { kind: 'smooth_bore' }>;
export type AutomaticNozzle = Extract<Nozzle, { kind: 'automatic' }>;
/** Bore of a smooth-bore nozzle where the step that uses it names no tip, m. */
export function boreOf(nozzle: SmoothBore): number {
  const found = nozzle.bore ?? nozzle.tips?.[0];
  if (found === undefined) throw new TypeError('a smooth-bore nozzle without a bore passed its schema');
  return found;
}
