import * as z from 'zod';
import { quantity } from '../../quantity/schema.js';
import { wholeNumber } from './steps.js';

const MOST_TENDERS = 50;
/** Longest road to a fill site, m (310 miles), and slowest pace on it, m/s (0.2 mph); common practice, no source. */
const LONGEST_ROAD = 500_000;
const SLOWEST = 0.1;

/** Filling and emptying a tender take at least so long, s; common practice, no source. */
const LEAST_TIME = 1;

const time = (description: string, example: string) =>
  quantity('time', { positive: true, atLeast: LEAST_TIME, example, description });
const distance = (description: string) =>
  quantity('length', { atLeast: 0, atMost: LONGEST_ROAD, example: '3 mi', description });
const speed = (description: string) =>
  quantity('velocity', { positive: true, atLeast: SLOWEST, example: '25 mph', description });

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
      first_in: quantity('time', {
        atLeast: 0,
        example: '15 min',
        description: 'When the first tender stands ready to dump, from when the water is turned on',
      }).optional(),
      dump_tank: quantity('volume', {
        positive: true,
        example: '2,000 gal',
        description: 'Portable tank that they dump into, beside the engine',
      }).optional(),
    })
    .meta({ title: 'shuttle', description: 'The tender shuttle that feeds the engine' }),
);

export type ShuttleDocument = z.output<typeof shuttleSchema>;
