import * as z from 'zod';
import { quantity } from '../../quantity/schema.js';
import { across } from './bore.js';

/** How a part that has no length to speak of loses head: one of these keys. */
export const LOCAL_LOSS_KEYS = ['loss', 'k', 'friction_multiple', 'flow_coefficient'] as const;

export const localLossKeys = {
  loss: quantity('pressure', { atLeast: 0 })
    .optional()
    .meta({ description: 'A fixed allowance, the same at any flow' }),
  k: z
    .number({ error: 'a bare number is wanted: velocity heads' })
    .nonnegative()
    .max(1e6, 'at most 1,000,000 is wanted')
    .optional()
    .meta({ description: 'Velocity heads lost, on the velocity in the bore' }),
  friction_multiple: z
    .number({ error: 'a bare number is wanted: N in K = N f_T' })
    .nonnegative()
    .max(1e6, 'at most 1,000,000 is wanted')
    .optional()
    .meta({
      description: 'N in K = N f_T, f_T being the friction factor of fully turbulent flow in the bore',
    }),
  flow_coefficient: z
    .number({ error: 'a bare number is wanted: gpm at a loss of 1 psi' })
    .min(1e-3, 'at least 0.001 is wanted')
    .max(1e6, 'at most 1,000,000 is wanted')
    .optional()
    .meta({ description: 'Flow coefficient: gpm of water at a loss of 1 psi' }),
};

/** Bore of a part that loses velocity heads; without it, the bore is that of the step before. */
export const lossBore = {
  inside_diameter: across.optional().meta({
    description: 'Bore whose velocity k or friction_multiple is on; without it, that of the step before',
  }),
};

/** For parts that are a check valve in all but name. */
export const oneWay = {
  one_way: z.boolean().optional().meta({ description: 'Lets water pass one way only' }),
};

export type LocalLoss =
  /** A fixed loss, Pa. */
  | { law: 'fixed'; loss: number }
  /** K on the velocity in the bore, m; no bore means that of the step before. */
  | { law: 'k'; k: number; insideDiameter?: number }
  /** K = N f_T. */
  | { law: 'friction_multiple'; multiple: number; insideDiameter?: number }
  /** US gpm at a loss of 1 psi. */
  | { law: 'flow_coefficient'; coefficient: number }
  /** A fixed loss by bands of flow: from each flow (m3/s) up, the loss (Pa); flows rise, the first is 0. */
  | { law: 'bands'; bands: { from: number; loss: number }[] };

interface LocalLossFields {
  loss?: number;
  k?: number;
  friction_multiple?: number;
  flow_coefficient?: number;
  bands?: { from: number; loss: number }[];
  inside_diameter?: number;
}

/** The one law of loss that a fitting, valve or appliance gives; undefined where it gives none. */
export function localLoss(part: LocalLossFields): LocalLoss | undefined {
  const insideDiameter = part.inside_diameter;
  if (part.loss !== undefined) return { law: 'fixed', loss: part.loss };
  if (part.k !== undefined) return { law: 'k', k: part.k, insideDiameter };
  if (part.friction_multiple !== undefined)
    return { law: 'friction_multiple', multiple: part.friction_multiple, insideDiameter };
  if (part.flow_coefficient !== undefined)
    return { law: 'flow_coefficient', coefficient: part.flow_coefficient };
  if (part.bands !== undefined) return { law: 'bands', bands: part.bands };
  return undefined;
}
