import * as z from 'zod';
import { applianceSchema } from '../../catalogue/schema/appliance.js';
import { nearest } from '../../quantity/nearest.js';
import { quantity } from '../../quantity/schema.js';
import { choice, isMapping, whatStands } from './choice.js';
import { idOr, stepsSchema } from './steps.js';

const draft = z.lazy(() =>
  z.strictObject({
    draft: z.strictObject({
      lift: quantity('length', {
        atLeast: 0,
        example: '10 ft',
        description: 'How far the water lies below the pump inlets',
      }),
      suction: stepsSchema.optional().meta({ description: 'Suction hose, from the water to the engine' }),
      strainer: idOr('appliance', applianceSchema).optional(),
    }),
  }),
);

const hydrant = z.lazy(() =>
  z.strictObject({
    hydrant: z
      .strictObject({
        static: quantity('pressure', {
          positive: true,
          example: '80 psi',
          description: 'With nothing flowing',
        }),
        residual: quantity('pressure', {
          atLeast: 0,
          example: '60 psi',
          description: 'While `flow` was flowing',
        }),
        flow: quantity('flow', { positive: true, example: '500 gpm' }),
      })
      .refine((test) => test.residual <= test.static, {
        path: ['residual'],
        error: 'the residual pressure is over the static: a hydrant loses pressure as it flows',
      }),
  }),
);

const relay = z.lazy(() =>
  z.strictObject({
    relay: z.strictObject({
      pressure: quantity('pressure', {
        atLeast: 0,
        example: '60 psi',
        description: 'Pressure that the pump before holds at the intake',
      }),
      relief: quantity('pressure', { positive: true, example: '70 psi' })
        .optional()
        .meta({ description: 'Pressure at which the intake relief opens' }),
    }),
  }),
);

const KINDS = ['draft', 'hydrant', 'relay'] as const;
const WANTED = 'tank is wanted, or a mapping: draft, hydrant or relay';

/** Where the water comes from: the engine's own tank unless said otherwise. */
export const supplySchema = choice([z.literal('tank'), draft, hydrant, relay], (value) => {
  if (value === 'tank') return 0;
  if (!isMapping(value)) return `${whatStands(value)}; ${WANTED}`;
  const kind = KINDS.findIndex((key) => Object.hasOwn(value, key));
  if (kind >= 0) return kind + 1;
  const meant = Object.keys(value)
    .map((key) => nearest(key, KINDS))
    .find((key) => key !== undefined);
  return `${WANTED}${meant ? `: did you mean ${meant}?` : ''}`;
}).meta({ description: 'Where the water comes from' });
