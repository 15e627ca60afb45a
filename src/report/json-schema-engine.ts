import * as z from 'zod';
import { maybe, quantityJson, reason, stagingName, verdict } from './json-schema-parts.js';

/** The shapes of what a check says of the engine besides its rating: heat, one pump out, life, weight and limits. */

export const heatJson = z.array(
  z
    .strictObject({
      name: z.string(),
      flow: quantityJson('Through it.'),
      leaving: maybe('Temperature of the water that leaves it; null where its power is not known.'),
      basis: z.enum(['efficiency', 'engine_rating', 'not_known']).meta({
        description: 'Where its power comes from; the rating of its engine is a bound.',
      }),
      power_at_shutoff: maybe('Taken at no flow.'),
      least_flow: maybe('Keeps the water from warming by more than 15 degF.'),
      rough_least_flow: maybe('By the rough rule of 300 gpm for each 100 hp.'),
      shut_flow: quantityJson('Through it with every outlet shut.'),
      shut_leaving: maybe('Temperature of that water; null where none flows or the power is not known.'),
      cooling: z.enum(['own', 'behind_check', 'shared', 'shut', 'none']).meta({
        description: 'Where its cooling line leaves.',
      }),
      cools_shut_out: z.boolean().meta({ description: 'Also when its check valve is held shut.' }),
      trapped: maybe('Water in its casing.'),
      until_scald: maybe('From no flow until that water is at 140 degF, at the soonest.'),
      until_boiling: maybe('From no flow until that water would boil in the open, at the soonest.'),
    })
    .meta({ description: 'What a pump does to the temperature of its water.' }),
);

const pumpOutJson = z
  .strictObject({
    out: z.string(),
    staging: stagingName,
    verdict,
    types: z.array(
      z.strictObject({
        class: z.string(),
        title: z.string(),
        flow: quantityJson('Asked.'),
        pressure: quantityJson('Asked.'),
        margin: quantityJson('Over what is asked.'),
        inventory: z.enum(['meets', 'falls_short', 'not_stated']).meta({
          description: 'Of what else the type asks: tank, hose, crew, weight.',
        }),
        missing: z.array(z.string()).meta({ description: 'Lines of the inventory that fall short of it.' }),
      }),
    ),
    standing: z.array(
      z.strictObject({
        staging: stagingName,
        check: z.enum(['works', 'stuck_open']),
        reaches: z.boolean().meta({ description: 'Whether the other pump reaches the required pressure.' }),
        flow: maybe(
          'Of the other pump at the required pressure; null where it does not reach it or cannot be.',
        ),
        shutoff: maybe('Of the other pump with nothing drawn.'),
        backflow_shut: maybe('Back through the pump that stands, with the outlets shut.'),
        backflow: maybe('Back through it at the required pressure.'),
        reason,
      }),
    ),
  })
  .meta({ description: 'One pump out: what is left, and what it does where its valves stay open.' });

const lifeJson = z
  .strictObject({
    pumps: z.array(
      z.strictObject({
        name: z.string(),
        hours: maybe('Run.'),
        wear: quantityJson('Part of its head.'),
        bears: maybe('Wear of it alone at which the verdict falls short; null where none does.'),
        services: z.array(
          z.strictObject({
            service: z.string(),
            at: maybe('Running hours at which it falls due.'),
            left: maybe('Until then; below zero where it is overdue.'),
            on: z.string().nullable().meta({ description: 'Day on which it falls due.' }),
          }),
        ),
      }),
    ),
    lead: z
      .strictObject({ name: z.string(), behind: quantityJson('Hours fewer than the other.').nullable() })
      .nullable()
      .meta({ description: 'The pump that should lead until their hours are even.' }),
    unworn: z
      .strictObject({
        margin: quantityJson('At the required flow with both unworn.'),
        cost: maybe('What wear has taken of it.'),
      })
      .nullable(),
    both_bear: maybe('Wear of both alike at which the verdict falls short.'),
    short: z.boolean().meta({ description: 'The verdict falls short as the pumps are.' }),
    same_model: z.boolean(),
    parts_in_common: z.array(z.string()).nullable(),
  })
  .nullable()
  .meta({ description: 'The pair over its life; null where the check was not asked to work it out.' });

const axlesJson = z
  .strictObject({
    cases: z.array(
      z.strictObject({
        tank: quantityJson('Part that is full.'),
        crew: z.boolean(),
        gross: quantityJson('In all.'),
        front: maybe('On the front axle; null where a weight has no place.'),
        rear: maybe('On the rear axle or pair.'),
        front_at_least: maybe('Where a weight has no place: of those that have one.'),
        rear_at_least: maybe('Where a weight has no place: of those that have one.'),
        left_of_middle: maybe('Of the centre of gravity; right of it below zero.'),
      }),
    ),
    ratings: z.strictObject({ gross: maybe('Rating.'), front: maybe('Rating.'), rear: maybe('Rating.') }),
    unplaced: z.array(z.string()).meta({ description: 'Weights that have no place.' }),
    left_out: z
      .array(z.string())
      .meta({ description: 'Parts that nothing states the weight of: it weighs more.' }),
    wheelbase_stated: z.boolean(),
    rules: z.array(z.strictObject({ text: z.string(), source: z.string().nullable() })),
  })
  .nullable()
  .meta({ description: 'Loads of the axles; null where the layout states no weight.' });

const ledgerJson = z
  .strictObject({
    lines: z.array(
      z.strictObject({
        code: z.string().meta({ description: 'Of the caution that speaks where it is passed.' }),
        limit: z.string(),
        at: z.string(),
        allowed: quantityJson('Limit.'),
        at_least: z.boolean().meta({ description: 'A least rather than a most.' }),
        operating: maybe('Load at the operating point; null where there is none.'),
        worst: quantityJson('Load in the worst case.'),
        worst_when: z.string(),
        margin: quantityJson('What the worst case leaves, as a part of the limit.'),
        left_out: z
          .array(z.string())
          .meta({ description: 'Parts that nothing states the weight of: it weighs more.' }),
        unplaced: z
          .array(z.string())
          .meta({ description: 'Weights without a place: the load is a least, the margin a most.' }),
        source: z.string(),
      }),
    ),
    of: z.int().meta({ description: 'How many limits there are in all.' }),
    not_known: z.array(z.string()).meta({ description: 'Hose of which nothing says what it bears.' }),
  })
  .meta({ description: 'Limits with their loads, tightest first.' });

const costJson = z.union([quantityJson('In its unit.'), z.number()]);

/** What an engine whose file gives no power may have had when its curve was measured. */
export const unknownPower = z.enum(['power_to_spare', 'constant_power', 'flat_torque']);

export const engineJson = {
  hot_day: z
    .strictObject({
      air_temperature: quantityJson('Of the hottest test.'),
      verdict,
      cases: z
        .array(z.strictObject({ engine: unknownPower, verdict }))
        .nullable()
        .meta({ description: 'The bracket where a file gives no power, its least the verdict.' }),
    })
    .nullable()
    .meta({ description: "The pumps' verdict on a hot day; null where the layout's is as hot." }),
  heat: heatJson,
  pumps_out: z.array(pumpOutJson),
  life: lifeJson,
  axles: axlesJson,
  pair_cost: z
    .strictObject({
      against: z.string(),
      rows: z.array(
        z.strictObject({ of: z.enum(['weight', 'fuel', 'price']), pair: costJson, single: costJson }),
      ),
    })
    .nullable()
    .meta({
      description: 'The pair against one larger pump; null where the layout has not figures for both.',
    }),
  ledger: ledgerJson,
};
