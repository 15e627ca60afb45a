import * as z from 'zod';
import { format, maybe, quantityJson, statementJson } from '../json-schema-parts.js';

const bandPoint = {
  flow: quantityJson('At rated speed.'),
  pressure: quantityJson('Total head that the pump adds, as pressure of the water pumped.'),
  low: quantityJson('Lower end of the band.'),
  high: quantityJson('Upper end of the band.'),
};

/** What `pumpyoke curve --json` prints. */
export const curveJson = z
  .strictObject({
    format,
    question: z.literal('curve'),
    title: z.string(),
    rated_speed: quantityJson('To which the readings were corrected.'),
    water_temperature: quantityJson('Of the water pumped.'),
    shape: z.enum(['power', 'quadratic', 'monotone']),
    shape_chosen: z.enum(['by_the_readings', 'as_asked']),
    confidence: quantityJson('Of the band, each flow by itself.'),
    scatter: quantityJson('Standard deviation of a reading about the curve.'),
    freedom: z.int().meta({ description: 'Degrees of freedom of the scatter.' }),
    gauge_error: maybe(
      'What the gauge may be off by at every reading alike; null where the file does not say.',
    ),
    shutoff: z.strictObject({ ...bandPoint, basis: z.enum(['measured', 'extrapolated']) }),
    repeatability: z
      .strictObject({
        limit: quantityJson('Two readings of one flow differ by less, 95 times in 100.'),
        flows: z.int().meta({ description: 'Flows that were read more than once.' }),
      })
      .nullable(),
    bad_reading: z
      .strictObject({
        line: z.int(),
        over: quantityJson('Over the curve that the others make.'),
        chance: quantityJson('That sound readings would have one so far out.'),
      })
      .nullable()
      .meta({ description: 'The reading that was left out; null where all agree.' }),
    copies: z.array(z.strictObject({ line: z.int(), of: z.int() })),
    wear: z
      .strictObject({
        against: z.string(),
        wear: quantityJson('Part of the pressure that is lost; below 0 where there is more.'),
        low: quantityJson('Lower end of its interval.'),
        high: quantityJson('Upper end of its interval.'),
        proven: z.boolean(),
        lies: z.enum(['evenly', 'at_large_flows', 'at_small_flows']),
        readings: z.int(),
      })
      .nullable(),
    readings: z.array(
      z.strictObject({
        line: z.int().meta({ description: 'Of the file, from one.' }),
        read: z.strictObject({
          flow: quantityJson('As read.'),
          discharge: quantityJson('As read.'),
          inlet: quantityJson('As read; below 0 for a vacuum.'),
          speed: quantityJson('As read.'),
        }),
        flow: quantityJson('At rated speed.'),
        pressure: quantityJson('Total head at rated speed, as pressure.'),
        over: quantityJson('Over the fitted curve.'),
        left_out: z.boolean(),
      }),
    ),
    curve: z.array(z.strictObject(bandPoint)),
    row: z
      .record(z.string(), z.unknown())
      .meta({ description: 'The pump as a layout takes it under model.' }),
    notes: z.array(statementJson),
    assumptions: z.array(statementJson),
  })
  .meta({ title: 'curve' });

export type CurveJson = z.infer<typeof curveJson>;
