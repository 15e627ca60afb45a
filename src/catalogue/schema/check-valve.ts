import * as z from 'zod';
import { quantity } from '../../quantity/schema.js';
import { exactlyOne } from './exclusive.js';
import { LOCAL_LOSS_KEYS, localLossKeys, lossBore } from './local-loss.js';
import { description } from './text.js';

export const checkValveSchema = z
  .strictObject({
    ...description,
    ...localLossKeys,
    ...lossBore,
    minimum_velocity: quantity('velocity', { atLeast: 0 })
      .optional()
      .meta({ description: 'Velocity of water that holds it wide open' }),
  })
  .check(exactlyOne(LOCAL_LOSS_KEYS, 'a law of loss'))
  .meta({ title: 'check_valve' });

export type CheckValve = z.infer<typeof checkValveSchema>;
