import * as z from 'zod';
import { quantity } from '../../quantity/schema.js';
import { wholeNumber } from './steps.js';

const MOST_TENDERS = 50;

const time = (description: string, example: string) => quantity('time', { atLeast: 0, example, description });
const distance = (description: string) => quantity('length', { atLeast: 0, example: '3 mi', description });
const speed = (description: string) =>
  quantity('velocity', { positive: true, example: '25 mph', description });

/** Tenders that go round between a fill site and the engine. */
export const shuttleSchema = z.lazy(() =>
  z
    .strictObject({
      tenders: wholeNumber(1, MOST_TENDERS).meta({ description: 'How many go round' }),
      tank: quantity('volume', {
        positive: true,
        example: '2,000 gal',
        description: 'What one tender carries',
      }),
      fill: time('Filling one, all told', '8 min'),
      dump: time('Emptying one, all told', '4 min'),
      distance: distance('Road from the fill site to the engine, one way'),
      distance_back: distance('Road back, where it is another').optional(),
      speed: speed('On the road; by the 35 mph formula of fire services unless given').optional(),
      speed_back: speed('On the road back, where it is another').optional(),
      first_in: time(
        'When the first tender stands ready to dump, from when the water is turned on',
        '15 min',
      ).optional(),
      dump_tank: quantity('volume', {
        positive: true,
        example: '2,000 gal',
        description: 'Portable tank that they dump into, beside the engine',
      }).optional(),
    })
    .meta({ title: 'shuttle', description: 'The tender shuttle that feeds the engine' }),
);

export type ShuttleDocument = z.output<typeof shuttleSchema>;
