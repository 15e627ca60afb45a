import * as z from 'zod';
import { across } from './bore.js';
import { exactlyOne } from './exclusive.js';
import { friction, smoothEnough } from './friction.js';
import { description, text } from './text.js';

const { coefficient: _, ...pipeFriction } = friction;

export const pipeSchema = z
  .strictObject({
    ...description,
    nominal: across.optional().meta({ description: 'Size that the trade calls it by' }),
    schedule: text.optional().meta({ description: 'Schedule of the wall: 10S, 40S' }),
    inside_diameter: across.meta({ description: 'Bore' }),
    ...pipeFriction,
  })
  .check(exactlyOne(Object.keys(pipeFriction), 'a friction law'))
  .check(smoothEnough())
  .meta({ title: 'pipe' });

export type Pipe = z.infer<typeof pipeSchema>;
