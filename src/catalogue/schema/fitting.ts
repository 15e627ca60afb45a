import * as z from 'zod';
import { exactlyOne } from './exclusive.js';
import { LOCAL_LOSS_KEYS, localLossKeys, lossBore, oneWay } from './local-loss.js';
import { description } from './text.js';

/** An elbow, tee, entrance or wide-open valve in a run of pipe; its bore is the pipe's. */
export const fittingSchema = z
  .strictObject({ ...description, ...localLossKeys, ...lossBore, ...oneWay })
  .check(exactlyOne(LOCAL_LOSS_KEYS, 'a law of loss'))
  .meta({ title: 'fitting' });

export type Fitting = z.infer<typeof fittingSchema>;
