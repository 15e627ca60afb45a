import * as z from 'zod';
import { maybe, quantityJson, reason, shareJson, stagingName, verdict } from './json-schema-parts.js';

/** The shapes of what a check says of the engine as it runs: suction, pressure control and staging. */

const basis = z.enum(['file', 'file_extended', 'lift_practice']).meta({
  description:
    "What it is held against: the pump's own file, its rows carried on past their ends, or two thirds of the theoretical lift.",
});

export const suctionJson = z
  .strictObject({
    pumps: z.array(
      z.strictObject({
        pump: z.string(),
        npsh_available: maybe(
          'Net positive suction head there is at the required flow; null where water would boil at the inlet.',
        ),
        npsh_required: quantityJson('Net positive suction head that it is held against.'),
        basis,
        vacuum: maybe('As the intake gauge reads it; below zero where the inlet stands above the air.'),
        cavitates_from: maybe('Flow drawn at the outlet; null where it does not before its curve ends.'),
      }),
    ),
    tank: z
      .array(
        z.strictObject({
          level: quantityJson('Part that is full.'),
          verdict,
          pump: z.string().nullable().meta({ description: 'The one with the least suction head to spare.' }),
          margin: maybe('Suction head to spare; null where that state cannot be.'),
          vacuum: maybe('At that pump.'),
          reason,
        }),
      )
      .meta({ description: 'Tank to pump, full and four fifths drawn; empty where the water is no tank.' }),
    lift: z
      .strictObject({
        lift: quantityJson('That the typing asks for.'),
        attainable: quantityJson('By a pump in good order at this height.'),
        hose_stated: z.boolean(),
        rows: z.array(
          z.strictObject({
            staging: stagingName,
            most: quantityJson('Most that can be drawn.'),
            limit: z.enum(['cavitates', 'end_of_curve']),
            pump: z.string(),
            basis,
            vacuum: maybe('Highest of the pumps, while that is drawn; null where even that cannot be.'),
          }),
        ),
      })
      .nullable()
      .meta({ description: 'Null where the typing asks for no lift.' }),
  })
  .nullable();

const lineControlShape = {
  device: z
    .discriminatedUnion('kind', [
      z.strictObject({
        kind: z.literal('relief'),
        set: quantityJson('Opens at.'),
        overpressure: quantityJson('Over its setting, fully lifted.'),
        full_flow: quantityJson('Passed then.'),
      }),
      z.strictObject({ kind: z.literal('governor'), set: quantityJson('Held at the discharge.') }),
    ])
    .nullable(),
  relief_idle: z
    .boolean()
    .meta({ description: 'A relief valve is stated, and no water comes to it in this staging.' }),
  over_setting: maybe(
    'With everything shut, the highest discharge less the setting; null where there is no device.',
  ),
  line_shut: z
    .strictObject({
      nozzle: z.string(),
      at: z.string(),
      rise: quantityJson('Where it is greatest.'),
      at_nozzle: z.boolean().meta({ description: 'At another nozzle, rather than at a pump.' }),
    })
    .nullable()
    .meta({ description: 'The greatest rise that shutting one nozzle makes elsewhere.' }),
  surges: z.array(
    z.strictObject({
      nozzle: z.string(),
      velocity: quantityJson('Of the water that is stopped.'),
      wave_speed: quantityJson('Of a pressure wave in the hose.'),
      stated: z.boolean().meta({ description: 'Whether the layout states the wave speed.' }),
      closing_time: maybe('Null where it is slammed.'),
      rise: quantityJson('By Joukowsky.'),
      peak: quantityJson('With what stood there before.'),
      hose_limit: maybe('What the hose that the nozzle hangs on bears; null where that is not known.'),
    }),
  ),
};

export const lineControlJson = z
  .strictObject(lineControlShape)
  .meta({ description: 'What keeps the pressure down when a line is shut, and what happens all the same.' });

export const pressureControlJson = z
  .strictObject({
    ...lineControlShape,
    flowing: quantityJson('Highest pump discharge at the required flow.'),
    shut: quantityJson('Highest pump discharge with the outlets shut and the device acting.'),
    needed: maybe('Where the device stands, by the required flow at its pressure; null past the curves.'),
    highest_setting: z
      .strictObject({
        pressure: quantityJson('That every part bears.'),
        by: z.string(),
        rule: z.enum(['part_of_service_test', 'service_test', 'working', 'casing']),
      })
      .nullable(),
    highest_at: z
      .array(
        z.strictObject({
          at: z.string(),
          pressure: maybe('Highest setting there; null where nothing says what it bears.'),
          by: z.string().nullable(),
        }),
      )
      .meta({ description: 'Of each place that a device stands at.' }),
    series: z.array(
      z.strictObject({
        staging: stagingName,
        second: z.string(),
        inlet: quantityJson('Of the second pump, shut off.'),
        inlet_limit: maybe('Of its inlet and seal.'),
        discharge: quantityJson('Of the second pump, shut off.'),
        casing_limit: maybe('Of its casing.'),
      }),
    ),
  })
  .nullable();

export const stagingAdviceJson = z
  .strictObject({
    best: stagingName,
    verdict,
    reason: z.string(),
    parallel: z
      .strictObject({
        shares: z.array(shareJson),
        weaker: z.string(),
        shut_out_from: maybe(
          'Pressure at the outlet from which the weaker pump moves no water; null where nothing shuts it out.',
        ),
        shut_out_at_rest: z.boolean(),
        balance: z
          .strictObject({
            pump: z.string(),
            throttle: quantityJson('Of rated speed, at which both move alike.'),
            pressure: quantityJson('At the outlet then.'),
          })
          .nullable(),
        drooping: z.array(z.string()),
      })
      .nullable(),
    series: z.array(
      z.strictObject({
        staging: stagingName,
        first: z.string(),
        second: z.string(),
        flow: quantityJson('The required one, or the most that the curves allow.'),
        between: quantityJson("At the second pump's inlet at that flow."),
        between_limit: maybe('Of its inlet and seal.'),
        most_if_first_stops: maybe(
          'Most that the second pump can draw through the first one standing still.',
        ),
      }),
    ),
  })
  .nullable();
