import * as z from 'zod';
import {
  cautionJson,
  headJson,
  impossibleJson,
  impossiblesJson,
  maybe,
  quantityJson,
  solverJson,
  stagingName,
  statementJson,
} from './json-schema-parts.js';

/** The shapes of `advance` and `clock`. */

const limitJson = z
  .strictObject({
    code: z.enum([
      'cannot_be',
      'nozzle_below_minimum',
      'hose_over_limit',
      'intake_below_floor',
      'tank_not_fed',
      'hose_run_out',
      'fittings_run_out',
      'water_run_out',
    ]),
    at: z.string(),
    state: z
      .enum(['flowing', 'shut'])
      .meta({ description: 'With water flowing, or with every nozzle shut.' }),
    value: maybe('What was found; null where the state cannot be.'),
    limit: maybe('What it is held against; null where the state cannot be.'),
    reason: z.string().nullable().meta({ description: 'Why the state cannot be.' }),
    source: z.string(),
  })
  .meta({ description: 'What stops a lay.' });

const storeJson = z.strictObject({
  item: z.string(),
  used: quantityJson('On the ground; the unit of pieces is each.'),
  carried: maybe('Null where the layout does not say.'),
});

const hoseJson = z.strictObject({ at: z.string(), pressure: quantityJson('Gauge, the highest along it.') });

const farNozzleJson = z
  .strictObject({ name: z.string(), flow: quantityJson('Out of it.'), pressure: quantityJson('Gauge.') })
  .nullable();

const stepJson = z
  .strictObject({
    section: z.int(),
    distance: quantityJson('Hose from the outlet.'),
    height: quantityJson('Of the head of the lay, above the pump inlets.'),
    laterals: z.int(),
    laterals_open: z.int(),
    impossible: impossibleJson,
    total_flow: maybe('Out of all ends together.'),
    pump_pressure: maybe("The highest discharge of the engine's own pumps."),
    head_pressure: maybe('At the head of the hose, where the trunk ends.'),
    far_wye_pressure: maybe('The same, by the name that it had first.'),
    far_nozzle: farNozzleJson,
    highest_hose_flowing: hoseJson.nullable(),
    highest_hose_shut: hoseJson,
    hose: z.array(storeJson),
    fittings: z.array(storeJson),
    water: z
      .strictObject({
        fill: quantityJson('Fills the hose.'),
        used: quantityJson('Poured on the way.'),
        brought: quantityJson('Put back by tenders.'),
        left: quantityJson('Above the reserve.'),
        lasts: maybe('At this flow; null where it does not run down.'),
      })
      .nullable(),
    limits: z.array(limitJson),
  })
  .meta({ description: 'The lay at one length.' });

const optionJson = z
  .strictObject({
    code: z.enum([
      'fewer_laterals',
      'laterals_shut',
      'staging',
      'throttle',
      'booster',
      'portable_tank',
      'doubled_trunk',
      'bigger_trunk',
      'more_hose',
      'more_fittings',
      'tender_shuttle',
    ]),
    title: z.string(),
    reached: z.int().meta({ description: 'The last section that nothing breaks.' }),
    gained: z.int().meta({ description: 'Sections beyond the plan as it stands.' }),
    distance: quantityJson('Hose from the outlet.'),
    height: quantityJson('Above the pump inlets.'),
    far_nozzle: farNozzleJson,
    placement: z
      .strictObject({
        section: z.int(),
        distance: quantityJson('Hose from the outlet.'),
        height: quantityJson('Above the pump inlets.'),
        pump: z.string(),
        throttle: quantityJson('Of governed speed.'),
        intake: quantityJson('Gauge, at its intake or at the inlet of its tank.'),
        discharge: quantityJson('Gauge.'),
        flow: quantityJson('Through it.'),
        floor: quantityJson('The least that is asked of that intake.'),
        source: z.string(),
      })
      .nullable()
      .meta({ description: 'Where a pump goes; null where the option has none, or gains nothing.' }),
    stop: limitJson.nullable(),
    needs: z.array(storeJson).meta({ description: 'What it takes beyond what is carried.' }),
    dry_at: z.int().nullable().meta({ description: 'Section by which tenders must have come.' }),
  })
  .meta({ description: 'One way to take the lay further.' });

/** What `advance --json` prints. */
export const advanceJson = z
  .strictObject({
    ...headJson('advance'),
    staging: stagingName,
    plan: z.strictObject({
      outlet: z.string(),
      trunk: z.string(),
      sections: z.int(),
      section_length: quantityJson('Of one section.'),
      every: z.int().nullable().meta({ description: 'Sections from one lateral to the next.' }),
      flowing: z.string(),
      pace: maybe('Time that a section takes.'),
    }),
    reached: z.int().meta({ description: 'The last section that nothing breaks; 0 where the first breaks.' }),
    stop: limitJson.nullable(),
    steps: z.array(stepJson),
    options: z.array(optionJson),
    hose_without_limit: z
      .array(z.string())
      .meta({ description: 'Hose on the ground of which no limit is known.' }),
    cautions: z.array(cautionJson),
    assumptions: z.array(statementJson),
    solver: solverJson,
  })
  .meta({
    title: 'Answer of pumpyoke advance',
    description: 'A lay that grows a section at a time, and what would take it further.',
  });

export const tankClockJson = z
  .strictObject({
    capacity: quantityJson('Full.'),
    reserve: quantityJson('Kept back.'),
    hose_fill: quantityJson('Fills the hose on the ground.'),
    usable: quantityJson('Left to flow.'),
    flow_full: quantityJson('Drawn from a full tank.'),
    flow_low: quantityJson('Drawn with only the reserve left.'),
    surface_full: quantityJson('Height over the pump inlets.'),
    surface_low: quantityJson('Height over the pump inlets.'),
    endurance: maybe('Integrated with the level; null where nothing is drawn.'),
    ends: z
      .strictObject({ left: quantityJson('In the tank.'), why: impossibleJson })
      .nullable()
      .meta({ description: 'Where the flow ceases to be before the reserve; null where it does not.' }),
    flow_times_minutes: maybe('What the flow from a full tank, taken as steady, would say.'),
    source: z.string(),
  })
  .nullable();

const shuttleJson = z
  .strictObject({
    tenders: z.int(),
    load: quantityJson('Delivered by one tender in a round.'),
    fill: quantityJson('Time.'),
    there: quantityJson('Loaded, one way.'),
    dump: quantityJson('Time.'),
    back: quantityJson('Empty, one way.'),
    cycle: quantityJson('One round.'),
    by_formula: z.boolean().meta({ description: 'Road time by the 35 mph formula.' }),
    sustained: quantityJson('By all of them.'),
    drawn: quantityJson('By the lay.'),
    needed: z.int().nullable().meta({ description: 'Null where one fill and dump site cannot pass it.' }),
    first_gap: maybe('From when the water is turned on; null where there is none.'),
    next_tender: maybe('When the next tender is in after that; null where one is in and dumps too little.'),
    gap_lasts: maybe('From the one to the other.'),
    horizon: quantityJson('Looked at for so long.'),
    source: z.string(),
  })
  .nullable();

/** What `clock --json` prints. */
export const clockJson = z
  .strictObject({
    ...headJson('clock'),
    staging: stagingName,
    impossible: impossiblesJson,
    total_flow: maybe('Out of all ends together; null where it cannot be.'),
    tank: tankClockJson,
    shuttle: shuttleJson,
    fuel: z.array(
      z.strictObject({
        pump: z.string(),
        burn: maybe('Null where it is not known.'),
        basis: z.enum(['rated', 'shaft_power']),
        on_board: maybe('Null where the layout does not say.'),
        lasts: maybe('Until its tank is empty.'),
        source: z.string(),
      }),
    ),
    first_refuelling: z.strictObject({ pump: z.string(), at: quantityJson('Time.') }).nullable(),
    cautions: z.array(cautionJson),
    assumptions: z.array(statementJson),
    solver: solverJson,
  })
  .meta({ title: 'Answer of pumpyoke clock', description: 'How long water and fuel last.' });

export type AdvanceJson = z.infer<typeof advanceJson>;
export type ClockJson = z.infer<typeof clockJson>;
