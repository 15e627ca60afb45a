import * as z from 'zod';
import { ROUGHEST_PART } from '../../physics/moody.js';
import { wallRoughness } from './bore.js';

/** How a length of hose or pipe loses head: one of these keys. */
export const FRICTION_KEYS = ['coefficient', 'roughness', 'hazen_williams'] as const;

export const friction = {
  coefficient: z
    .number({ error: 'a bare number is wanted: psi in 100 ft at 100 gpm' })
    .min(1e-5, 'at least 0.00001 is wanted')
    .max(1e6, 'at most 1,000,000 is wanted')
    .optional()
    .meta({ description: 'C in psi = C (gpm/100)^2 (ft/100)' }),
  roughness: wallRoughness
    .optional()
    .meta({ description: 'Absolute roughness of the wall, for Darcy-Weisbach' }),
  hazen_williams: z
    .number({ error: 'a bare number is wanted: the C of Hazen-Williams, for instance 140' })
    .min(10, 'at least 10 is wanted, of the roughest pipe')
    .max(300, 'at most 300 is wanted, of the smoothest')
    .optional()
    .meta({ description: 'C of Hazen-Williams' }),
};

/** A check that a wall is no rougher than its bore allows. */
export function smoothEnough<T extends { roughness?: number; inside_diameter: number }>() {
  return z.superRefine<T>(({ roughness = 0, inside_diameter }, context) => {
    if (roughness <= ROUGHEST_PART * inside_diameter) return;
    context.addIssue({
      code: 'custom',
      path: ['roughness'],
      message: `the wall is too rough for its bore: at most ${100 * ROUGHEST_PART} % of the inside diameter is wanted`,
    });
  });
}

export type FrictionLaw =
  /** C in psi = C (gpm/100)^2 (ft/100). */
  | { law: 'coefficient'; coefficient: number }
  /** Absolute roughness, m. */
  | { law: 'darcy'; roughness: number }
  | { law: 'hazen_williams'; hazenWilliams: number };

/** The one law that a hose or pipe gives; its schema has seen to it that there is one. */
export function frictionLaw(part: {
  coefficient?: number;
  roughness?: number;
  hazen_williams?: number;
}): FrictionLaw {
  if (part.coefficient !== undefined) return { law: 'coefficient', coefficient: part.coefficient };
  if (part.hazen_williams !== undefined) return { law: 'hazen_williams', hazenWilliams: part.hazen_williams };
  if (part.roughness !== undefined) return { law: 'darcy', roughness: part.roughness };
  throw new TypeError('a hose or pipe without a friction law passed its schema');
}
