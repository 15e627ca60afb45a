import * as z from 'zod';
import { format, maybe, quantityJson, stagingName, statementJson, verdict } from '../json-schema-parts.js';

const instrument = z.enum([
  'tee',
  'panel',
  'flow',
  'discharge a',
  'discharge b',
  'inlet a',
  'inlet b',
  'speed a',
  'speed b',
]);
const orifice = maybe('Bore on the outlet; null with the outlets shut.');

const cause = z.strictObject({
  kind: z.enum([
    'pump_worn',
    'governor_low',
    'check_valve',
    'suction_blocked',
    'orifice_worn',
    'instrument_off',
  ]),
  at: z.string().meta({ description: 'The pump, the part or the instrument.' }),
  size: quantityJson('How large it is: a part, or a pressure; an instrument that reads low is below 0.'),
  deviation: quantityJson('Standard deviation of the size.'),
  at_flow: maybe('The flow that an obstruction costs its pressure at; null of other causes.'),
  text: z.string(),
});

/** What `pumpyoke trial --json` prints. */
export const trialJson = z
  .strictObject({
    format,
    question: z.literal('trial'),
    title: z.string(),
    engine: z.string(),
    date: z.string().nullable(),
    requirement: z.string().nullable(),
    verdict: z.enum(['passes', 'fails', 'not_judged']),
    judged: z.array(
      z.strictObject({
        line: z.int(),
        at: z.string(),
        read: quantityJson('What the gauge read; net of the intake where the point asks for it.'),
        passes: quantityJson('From which the scheme lets it pass.'),
        margin: quantityJson('Read over what passes.'),
        grade: z.string(),
        verdict,
        within_gauge_error: z
          .boolean()
          .meta({ description: 'The gauge may be off by as much as the margin.' }),
        gauge_error: quantityJson('What the gauge may be off by.'),
        source: z.string(),
      }),
    ),
    outcome: z.enum(['nothing_wrong', 'found', 'cannot_tell', 'unexplained']),
    alike: z
      .int()
      .meta({ description: 'Explanations, from the first, that the readings cannot tell apart.' }),
    sound_fits: quantityJson('Chance of readings so far from the prediction with nothing wrong.'),
    explanations: z
      .array(
        z.strictObject({
          causes: z.array(cause).meta({ description: 'One or two; none where nothing is wrong.' }),
          chance: quantityJson('Beside the other explanations.'),
          fits: quantityJson('Chance of so large a misfit, were it true.'),
        }),
      )
      .meta({ description: 'Most likely first.' }),
    telling_reading: z
      .strictObject({
        staging: stagingName,
        orifice,
        instrument,
        with_another_instrument: z.boolean(),
        under_the_first: quantityJson('What it would read.'),
        under_the_second: quantityJson('What it would read.'),
      })
      .nullable()
      .meta({ description: 'What to read to tell the first two explanations apart.' }),
    readings: z.array(
      z.strictObject({
        line: z.int(),
        staging: stagingName,
        orifice,
        instrument,
        read: quantityJson('As read.'),
        predicted: maybe('Null where the state cannot be; reason says why.'),
        tolerance: maybe('What nine readings in ten keep within with nothing wrong.'),
        agrees: z.boolean().nullable(),
        flow_through_orifice: maybe('Of a tee: what the orifice passes at the reading.'),
        reason: statementJson.nullable(),
      }),
    ),
    predicted_band: z.array(
      z.strictObject({
        flow: quantityJson('Through an orifice.'),
        pressure: quantityJson('In its tee.'),
        low: quantityJson('Lower end of nine in ten.'),
        high: quantityJson('Upper end of nine in ten.'),
      }),
    ),
    notes: z.array(statementJson),
    assumptions: z.array(statementJson),
  })
  .meta({ title: 'trial' });

export type TrialJson = z.infer<typeof trialJson>;
