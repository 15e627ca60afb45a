import * as z from 'zod';
import { quantity } from '../../quantity/schema.js';
import { across } from './bore.js';
import { exactlyOne } from './exclusive.js';
import { FRICTION_KEYS, friction, smoothEnough } from './friction.js';
import { description, text } from './text.js';

const limits = () =>
  z.strictObject({
    service_test: quantity('pressure', { positive: true })
      .optional()
      .meta({ description: 'Pressure that the hose is tested at in service' }),
    working: quantity('pressure', { positive: true })
      .optional()
      .meta({ description: 'Highest working pressure' }),
    proof: quantity('pressure', { positive: true })
      .optional()
      .meta({ description: 'Pressure that a new hose is proved at' }),
    burst: quantity('pressure', { positive: true }).optional().meta({ description: 'Least burst pressure' }),
  });

export const hoseSchema = z.lazy(() =>
  z
    .strictObject({
      ...description,
      kind: z.enum(['attack', 'supply', 'forestry', 'booster', 'garden', 'suction']).optional(),
      jacket: text.optional().meta({ description: 'Make-up of the wall: lined, unlined, double jacket' }),
      nominal: across.optional().meta({ description: 'Size that the trade calls it by' }),
      inside_diameter: across.meta({
        description: 'Bore, from which velocity and content follow',
      }),
      ...friction,
      limits: limits().optional(),
      weight: z
        .strictObject({
          mass: quantity('mass', { positive: true }),
          per: quantity('length', { positive: true }),
        })
        .optional()
        .meta({ description: 'Weight of a length of it, empty' }),
    })
    .check(exactlyOne(FRICTION_KEYS, 'a friction law'))
    .check(smoothEnough())
    .meta({ title: 'hose' }),
);

export type Hose = z.infer<typeof hoseSchema>;

/** Mass of the empty hose, kg a metre, where it is known. */
export function massPerLength(hose: Hose): number | undefined {
  return hose.weight && hose.weight.mass / hose.weight.per;
}

/** Water that the full hose holds, m3 a metre: pi d^2 / 4. */
export function contentPerLength(hose: Pick<Hose, 'inside_diameter'>): number {
  return (Math.PI * hose.inside_diameter ** 2) / 4;
}
