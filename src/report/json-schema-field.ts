import * as z from 'zod';
import {
  cautionJson,
  headJson,
  impossibleJson,
  maybe,
  quantityJson,
  solverJson,
  stagingName,
  statementJson,
  verdict,
} from './json-schema-parts.js';

/** The shapes that the field questions share, and those of `require` and `reach`. */

export const habitJson = z
  .strictObject({
    outlet: z.string(),
    flow: quantityJson('That enters the trunk.'),
    hose: quantityJson('Length of the trunk.'),
    friction: quantityJson('With the flow leaving at each wye.'),
    friction_end_to_end: quantityJson('With all of it taken to the far end.'),
  })
  .meta({ description: 'Where the habit of taking all flow to the far end misleads by more than 5 psi.' });

const groundPointJson = z.strictObject({
  name: z.string(),
  distance: quantityJson('Hose from the outlet.'),
  height: quantityJson('Above the pump inlets.'),
  pressure: maybe('Gauge; null where it cannot be.'),
  reason: z.string().nullable().meta({ description: 'Why the pressure is null.' }),
});

export const profileJson = z
  .strictObject({
    outlet: z.string(),
    to: z.string().meta({ description: 'The far nozzle.' }),
    hose: quantityJson('Along the slope.'),
    on_map: quantityJson('The same off a map.'),
    climb: quantityJson('Height of the far end over the outlet.'),
    over_ridge: z.boolean().meta({ description: 'The highest point lies between the ends.' }),
    highest: groundPointJson,
    lowest: groundPointJson,
    taken_level: quantityJson('Hose of which nothing was said of its height.'),
  })
  .meta({ description: 'How the line to the far nozzle lies on the ground.' });

export const caseJson = z
  .strictObject({
    code: z.enum(['all_shut', 'governor_stuck', 'far_line_burst', 'one_pump_out', 'lowest_point']),
    title: z.string(),
    impossible: impossibleJson,
    total_flow: maybe('Out of all ends together; null where it cannot be.'),
    highest_hose: z.strictObject({ at: z.string(), pressure: quantityJson('Gauge.') }).nullable(),
    breaks: z.array(z.string()).meta({ description: 'Codes of the cautions that it raises.' }),
  })
  .meta({ description: 'A state that is looked into whether anyone asks or not.' });

export const supplyJson = z
  .strictObject({
    kind: z.enum(['tank', 'draft', 'hydrant', 'relay']),
    flow: quantityJson('Drawn.'),
    intake_pressure: maybe('Where the suctions part, gauge; null where it cannot be.'),
    reason: z.string().nullable().meta({ description: 'Why the pressure is null.' }),
    floor: z.strictObject({ pressure: quantityJson('Kept at least.'), source: z.string() }).nullable(),
    draft: z
      .strictObject({
        lift: quantityJson('Of the water to the pump inlets.'),
        theoretical_lift: quantityJson('The most that air pressure could lift here.'),
        attainable_lift: quantityJson('Two thirds of it.'),
      })
      .nullable(),
    hydrant: z
      .strictObject({
        static: quantityJson('Of the flow test.'),
        residual: quantityJson('Of the flow test.'),
        flow: quantityJson('Of the flow test.'),
        at_floor: maybe('Drawn down to the floor; null where the test shows no fall.'),
      })
      .nullable(),
    relay: z
      .strictObject({
        pressure: quantityJson('That the pump before holds.'),
        relief_at: quantityJson('Usual setting of the intake relief.'),
        relief: maybe('As the layout has it.'),
        source: z.string(),
      })
      .nullable(),
  })
  .meta({ description: 'Where the water comes from.' });

export const portableTankJson = z
  .strictObject({
    name: z.string(),
    capacity: quantityJson('Full.'),
    inflow: quantityJson('Into it.'),
    outflow: quantityJson('Drawn from it.'),
  })
  .meta({ description: 'An open tank in the line.' });

const demandJson = z
  .strictObject({
    staging: stagingName,
    verdict,
    impossible: impossibleJson,
    throttle: maybe(
      'Least part of governed speed that serves all; full where none does; null where it cannot be.',
    ),
    total_flow: maybe('Out of all ends together; null where it cannot be.'),
    pumps: z.array(
      z.strictObject({
        name: z.string(),
        flow: quantityJson('Through it.'),
        discharge_pressure: quantityJson('Gauge.'),
        inlet_pressure: quantityJson('Gauge.'),
        share: quantityJson('Of the flow.'),
        off_curve: z.boolean(),
      }),
    ),
    worst: z
      .strictObject({
        nozzle: z.string(),
        pressure: quantityJson('There is.'),
        required: quantityJson('Asked.'),
        margin: quantityJson('Below zero where it is short.'),
      })
      .nullable(),
    losing_tank: z
      .strictObject({ name: z.string(), by: quantityJson('Drawn over what runs in.') })
      .nullable()
      .meta({ description: 'An open tank of the line that loses water at that throttle.' }),
    highest_hose: z.strictObject({ at: z.string(), pressure: quantityJson('Gauge.') }).nullable(),
    stops: z.int().meta({ description: 'Dangers at that throttle.' }),
  })
  .meta({ description: 'What one staging needs, or how far it falls short.' });

const ruleJson = z
  .strictObject({
    rules: z.enum(['wildland', 'structural', 'engineering']),
    nozzle: z.string().meta({ description: 'The one that asks for the most by these rules.' }),
    outlet: z.string(),
    flow: quantityJson('Out of the outlet, nozzles at their ratings.'),
    nozzle_pressure: quantityJson('Wanted.'),
    friction: quantityJson('Of the hose.'),
    appliances: quantityJson('Of them all.'),
    appliance_count: z.int(),
    height: quantityJson('By the rule.'),
    climb: quantityJson('Height of the nozzle over the outlet.'),
    pressure: quantityJson('At the outlet, as the rules round it.'),
    stamp: statementJson,
  })
  .meta({ description: 'What a notebook would have said, by one rule set and no other.' });

/** What `require --json` prints. */
export const requireJson = z
  .strictObject({
    ...headJson('require'),
    verdict,
    staging: stagingName,
    as_laid: stagingName,
    needs: z.array(
      z.strictObject({
        name: z.string(),
        kind: z.string(),
        pressure: quantityJson('It is laid for.'),
        flow: maybe('At that pressure; null for an automatic nozzle.'),
        source: z.string(),
      }),
    ),
    outlets: z
      .array(
        z.strictObject({
          name: z.string(),
          flow: quantityJson('That the lay takes.'),
          pressure: quantityJson('That the lay takes, gauge.'),
        }),
      )
      .nullable(),
    outlets_impossible: impossibleJson,
    stagings: z.array(demandJson),
    servable: z
      .strictObject({
        staging: stagingName,
        served: z.array(z.string()),
        left_out: z.array(z.string()),
        exact: z.boolean().meta({ description: 'Every set was tried.' }),
        throttle: quantityJson('They are served at.'),
      })
      .nullable()
      .meta({ description: 'The largest set that can be served; null where all can.' }),
    rules: z.array(ruleJson),
    rules_omitted: statementJson.nullable(),
    habits: z.array(habitJson),
    cautions: z.array(cautionJson),
    assumptions: z.array(statementJson),
    solver: solverJson,
  })
  .meta({
    title: 'Answer of pumpyoke require',
    description: 'What the pumps must do so that every open nozzle has the pressure that it is laid for.',
  });

/** What `reach --json` prints. */
export const reachJson = z
  .strictObject({
    ...headJson('reach'),
    throttle: quantityJson('Part of governed speed.'),
    hose: z.string(),
    hose_source: z.string(),
    nozzle: z.strictObject({ name: z.string(), pressure: quantityJson('Laid for.'), source: z.string() }),
    lateral: z
      .strictObject({
        hose: z.string(),
        length: quantityJson('Of one lateral.'),
        nozzle: z.string(),
        pressure: quantityJson('Laid for.'),
      })
      .nullable(),
    carried: maybe('Of this hose; null where the layout does not say.'),
    longest: quantityJson('The longest lay that is looked at.'),
    downhill: z
      .strictObject({ height: quantityJson('Lost.'), pressure: quantityJson('That it adds in the hose.') })
      .nullable(),
    as_laid: stagingName,
    stagings: z.array(
      z.strictObject({
        staging: stagingName,
        shut_pressure: quantityJson('At the outlet, every nozzle shut.'),
        over_hose: z.strictObject({ limit: quantityJson('Of the hose.'), source: z.string() }).nullable(),
        stops: z
          .array(cautionJson)
          .meta({ description: 'Of a staging that is not laid: what must not be run in it.' }),
        rows: z.array(
          z.strictObject({
            grade: quantityJson('Height gained over level distance.'),
            cells: z.array(
              z.strictObject({
                laterals: z.int(),
                length: quantityJson('Of the trunk.'),
                from: maybe('Shorter lays do not do; null where every shorter one does.'),
                height: quantityJson('Gained over it.'),
                limit: z.enum(['nozzle', 'hose', 'cannot_be', 'longest_looked_at', 'no_steady_answer']),
              }),
            ),
          }),
        ),
      }),
    ),
    hose_without_limit: z
      .array(z.string())
      .meta({ description: 'The trunk, where no limit of its hose is known.' }),
    cautions: z.array(cautionJson),
    assumptions: z.array(statementJson),
    solver: solverJson,
  })
  .meta({
    title: 'Answer of pumpyoke reach',
    description: 'How far and how high each staging goes, by slope and open laterals.',
  });

export type RequireJson = z.infer<typeof requireJson>;
export type ReachJson = z.infer<typeof reachJson>;
