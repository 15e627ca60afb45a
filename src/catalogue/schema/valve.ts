import * as z from 'zod';
import { quantity } from '../../quantity/schema.js';
import { exactlyOne } from './exclusive.js';
import { LOCAL_LOSS_KEYS, localLossKeys, lossBore } from './local-loss.js';
import { description } from './text.js';

const partOpen = () =>
  z
    .array(
      z.tuple([
        quantity('ratio', { atLeast: 0, atMost: 1 }),
        z
          .number({ error: 'a bare number is wanted: velocity heads' })
          .nonnegative()
          .max(1e6, 'at most 1,000,000 is wanted'),
      ]),
    )
    .min(2, 'at least two openings are wanted')
    .superRefine((rows, context) => {
      for (let i = 1; i < rows.length; i++) {
        if (rows[i][0] >= rows[i - 1][0])
          context.addIssue({
            code: 'custom',
            path: [i, 0],
            message: 'openings are wanted from wide to narrow',
          });
        if (rows[i][1] < rows[i - 1][1])
          context.addIssue({
            code: 'custom',
            path: [i, 1],
            message: 'a loss is wanted that grows as the valve closes',
          });
      }
    });

export const valveSchema = z.lazy(() =>
  z
    .strictObject({
      ...description,
      ...localLossKeys,
      ...lossBore,
      part_open: partOpen().optional().meta({
        description:
          'Opening against the velocity heads lost over and above those of the valve wide open, from wide to narrow',
      }),
    })
    .check(exactlyOne(LOCAL_LOSS_KEYS, 'a law of loss wide open'))
    .meta({ title: 'valve' }),
);

export type Valve = z.infer<typeof valveSchema>;
