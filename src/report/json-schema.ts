import * as z from 'zod';
import { engineJson, heatJson, unknownPower } from './json-schema-engine.js';
import {
  caseJson,
  habitJson,
  portableTankJson,
  profileJson,
  reachJson,
  requireJson,
  supplyJson,
} from './json-schema-field.js';
import { advanceJson, clockJson, tankClockJson } from './json-schema-lay.js';
import {
  cautionJson,
  headJson,
  impossiblesJson,
  maybe,
  quantityJson,
  reason,
  shareJson,
  solverJson,
  stagingName,
  statementJson,
  verdict,
} from './json-schema-parts.js';
import {
  lineControlJson,
  pressureControlJson,
  stagingAdviceJson,
  suctionJson,
} from './json-schema-running.js';

/**
 * The shapes of the JSON answers, for programs that read them and for our own tests. The reports do not load this
 * module: building the schemas would cost every run what only a reader needs.
 */

const pointJson = z
  .strictObject({
    name: z.string(),
    pressure: maybe('Gauge; null where it cannot be.'),
    reads: z.enum(['static', 'total']).meta({
      description:
        'Static, as a gauge reads; total where no bore is known, which is more by the velocity head.',
    }),
    elevation: quantityJson('Height.'),
    reason,
  })
  .meta({ description: 'What a gauge would read.' });

const pressureMarginJson = z
  .strictObject({ pressure: quantityJson('Predicted.'), margin: quantityJson('Predicted less required.') })
  .nullable()
  .meta({ description: 'At the required flow; null where the pumps cannot pass it.' });

const flowMarginJson = z
  .strictObject({ flow: quantityJson('Predicted.'), margin: quantityJson('Predicted less required.') })
  .nullable()
  .meta({ description: 'At the required pressure; null where the pumps never reach it.' });

const requirementJson = z
  .strictObject({
    scheme: z.string(),
    class: z.string(),
    title: z.string(),
    flow: quantityJson('Of the governing point, the one with the least margin.'),
    pressure: quantityJson('Of the governing point.'),
    points: z.array(
      z.strictObject({
        name: z.string(),
        flow: quantityJson('Required.'),
        pressure: quantityJson('Required.'),
        net: z.boolean().meta({ description: 'Discharge less intake, rather than the gauge at the outlet.' }),
        lift: maybe('Suction lift that the point is rated at.'),
      }),
    ),
    source: z.string(),
    edition: z.string().nullable(),
  })
  .meta({ description: 'What the typing asks of the pumps.' });

const testOrificeJson = z
  .strictObject({
    bore: quantityJson('Of the orifice.'),
    discharge_coefficient: z.number(),
    reading: maybe('Predicted at the gauge upstream of the orifice; null where it cannot be told.'),
    flow: maybe('Through the orifice at that reading.'),
    margin: maybe('Reading less the pass mark.'),
    grade: z.string().nullable(),
    reason,
    grades: z.array(z.strictObject({ grade: z.string(), from: quantityJson('Where the grade starts.') })),
    source: z.string(),
  })
  .meta({ description: 'What the inspector will read; absent where the typing names no test orifice.' });

const stagingJson = z
  .strictObject({
    staging: stagingName,
    verdict,
    at_required_flow: pressureMarginJson,
    at_required_pressure: flowMarginJson,
    shutoff: maybe('At the outlet with nothing flowing.'),
    reachable: z.boolean().meta({ description: "Whether the required flow lies on the pumps' curves." }),
    reason,
    limit: z.string().nullable().meta({ description: 'What limits it, where something does.' }),
    shares: z.array(shareJson),
  })
  .meta({ description: 'The same question asked of one staging.' });

const inventoryJson = z
  .strictObject({
    item: z.string(),
    required: maybe('Asked; the unit of people and pieces is each.'),
    carried: maybe('Found in the layout; null where it does not say.'),
    at_most: z.boolean().meta({ description: 'The requirement is a maximum.' }),
    over: z.boolean().meta({ description: 'A minimum that has to be passed, not only reached.' }),
    verdict: z.enum(['meets', 'falls_short', 'not_stated', 'not_checked']),
    left_out: z
      .array(z.string())
      .meta({ description: 'Parts that nothing states the weight of: it weighs more.' }),
    note: z.string().nullable(),
    source: z.string(),
  })
  .meta({ description: 'One line of the typing that is not about pressure.' });

const lossJson = z
  .strictObject({
    where: z.string(),
    kind: z.string(),
    flow: quantityJson('Through it.'),
    loss: quantityJson('Lost; below zero where water runs downhill.'),
  })
  .meta({ description: 'One part at the required flow; the list has the largest first.' });

const pumpJson = z
  .strictObject({
    name: z.string(),
    model: z.string(),
    state: z.enum(['running', 'shut_out', 'dead_headed', 'stopped']).meta({
      description: 'Shut out by the other pump; dead-headed with every way out shut.',
    }),
    flow: quantityJson('Through it.'),
    delivered: quantityJson(
      'To its discharge, its own cooling line left out; below zero where water runs back.',
    ),
    cooling_flow: maybe('Back to the tank by its own cooling line; null where it has none.'),
    head_rise: quantityJson('From inlet to discharge, total head as pressure.'),
    inlet_pressure: maybe('Gauge; null where water would boil before it fell so far.'),
    discharge_pressure: maybe('Gauge; null where water would boil before it fell so far.'),
    inlet_vacuum: maybe('As the intake gauge reads it; null where the inlet is above the air.'),
    speed: maybe('Of the pump; null where its file names no rated speed.'),
    of_rated_speed: quantityJson('Part of the speed of its curve.'),
    limited_by: z.enum(['governor', 'power', 'not_known']).meta({
      description:
        'What keeps it from turning faster; not_known where its file has not both engine power and efficiency.',
    }),
    power: maybe('Drawn at the shaft; null where it is not known.'),
    power_available: maybe('From its engine at this site and speed; null where it is not known.'),
    power_rated: maybe('Of its engine, as its file has it.'),
    npsh_available: maybe('Net positive suction head there is; null where water would boil at the inlet.'),
    npsh_required: maybe('Net positive suction head it needs; null where it is not known.'),
    share: quantityJson('Of what the pumps give to the discharge.'),
    off_curve: z.boolean().meta({ description: 'Past the last point of its curve.' }),
    reason,
  })
  .meta({ description: 'One pump as it runs.' });

const verdictUnder = {
  verdict,
  pressure: maybe("At the required flow; null where it lies past the pumps' curves."),
  margin: maybe('Over the required pressure.'),
  reading: maybe("At the agency's test orifice; null where the typing names none."),
  reading_margin: maybe('Over the pass mark.'),
  pumps: z
    .array(z.strictObject({ name: z.string(), limited_by: z.enum(['governor', 'power', 'not_known']) }))
    .meta({ description: 'What keeps each from turning faster.' }),
  cavitating: z.array(z.string()).meta({ description: 'Pumps short of suction head by their own files.' }),
  reason,
};

const sweptQuantity = z.enum(['elevation', 'air_temperature', 'water_temperature', 'wear', 'tank_level']);

const acrossJson = z
  .strictObject({
    of: sweptQuantity,
    given: z
      .array(z.strictObject({ of: sweptQuantity, value: quantityJson('Held there.') }))
      .meta({ description: 'What is held besides, in place of what the layout has.' }),
    rows: z.array(z.strictObject({ value: quantityJson('Of what is swept.'), ...verdictUnder })),
  })
  .meta({ description: "The pumps' verdict under other conditions, with everything else as laid out." });

const height = {
  stands: z.enum(['nowhere', 'up_to', 'everywhere']),
  up_to: maybe('Highest place at which it stands; where that is everywhere, the highest that was looked at.'),
};

const highestPlaceJson = z
  .strictObject({
    ...height,
    cases: z
      .array(z.strictObject({ engine: unknownPower, ...height }))
      .nullable()
      .meta({ description: 'The bracket where a file gives no power; its least is the answer.' }),
  })
  .nullable()
  .meta({ description: "Where the pumps' verdict still stands, from sea level up." });

const powerBracketJson = z
  .strictObject({
    pumps: z.array(
      z.strictObject({
        name: z.string(),
        ratio: quantityJson('Power here over power where the curve was measured.'),
        aspiration: z.enum(['natural', 'turbocharged']),
      }),
    ),
    cases: z.array(z.strictObject({ lugging: z.enum(['constant_power', 'flat_torque']), ...verdictUnder })),
  })
  .nullable()
  .meta({
    description:
      'What the verdict becomes if an engine whose power is not known was at its limit when its curve was measured; null where every power is known or the place is no different.',
  });

const returnsJson = z
  .array(z.strictObject({ name: z.string(), flow: quantityJson('Back to the tank.') }))
  .meta({ description: "Open relief valves, and cooling lines that are no pump's own." });

/** What `check --json` prints. */
export const checkJson = z
  .strictObject({
    ...headJson('check'),
    left_out: z.array(z.string()).meta({
      description: 'What is told beside a verdict and is not here, because it has no steady state.',
    }),
    verdict,
    pump_verdict: verdict.meta({ description: "The pumps' part of the verdict, apart from the inventory." }),
    requirement: requirementJson,
    staging: stagingName,
    judged_at: z.string().meta({ description: 'Where the pressure is read.' }),
    at_required_flow: pressureMarginJson,
    at_required_pressure: flowMarginJson,
    reason,
    told_at: maybe(
      'Flow drawn where pumps, losses and gauges are told: what is required, or the most that can be drawn.',
    ),
    test_orifice: testOrificeJson.optional(),
    stagings: z.array(stagingJson),
    inventory: z.array(inventoryJson),
    losses: z.array(lossJson),
    points: z.array(pointJson),
    pumps: z.array(pumpJson),
    returns: returnsJson,
    highest_place: highestPlaceJson,
    power_bracket: powerBracketJson,
    suction: suctionJson,
    pressure_control: pressureControlJson,
    staging_advice: stagingAdviceJson,
    across: z.array(acrossJson),
    ...engineJson,
    cautions: z.array(cautionJson),
    assumptions: z.array(statementJson),
    solver: solverJson,
  })
  .meta({
    title: 'Answer of pumpyoke check',
    description: 'Whether a layout reaches the pressure at flow that its typing asks for.',
  });

const lineJson = z
  .strictObject({
    name: z.string(),
    kind: z.string(),
    flow: quantityJson('Through it.'),
    velocity: maybe('Mean; null where the bore is not known.'),
    loss: quantityJson('From inlet to outlet.'),
    inlet_pressure: maybe('Gauge; null where it cannot be.'),
    outlet_pressure: maybe('Gauge; null where it cannot be.'),
    reason,
  })
  .meta({ description: 'One part of the plumbing or the lay, in the order that water meets them.' });

const nozzleJson = z
  .strictObject({
    name: z.string(),
    kind: z.string(),
    state: z.enum(['open', 'shut']),
    flow: quantityJson('Out of it.'),
    pressure: maybe('Gauge, at the nozzle; null where it cannot be.'),
    reads: z.enum(['total', 'static_in_tee']).meta({
      description: 'Total, as a pitot gauge reads the jet, or static in the tee before a sharp orifice.',
    }),
    reason,
    reaction: maybe('Null where no law is known for it.'),
    reach: maybe('Null where no law is known for it.'),
    in_range: z.boolean().nullable().meta({ description: 'Null where no working range is known.' }),
    range: z
      .strictObject({ from: maybe('Least pressure.'), to: maybe('Greatest pressure.'), source: z.string() })
      .nullable(),
  })
  .meta({ description: 'The end of a line.' });

/** What `flow --json` prints. */
export const flowJson = z
  .strictObject({
    ...headJson('flow'),
    staging: stagingName,
    impossible: impossiblesJson,
    total_flow: maybe('Out of all ends together; null where it cannot be.'),
    impossible_at: z.string().nullable().meta({
      description: 'Where the first of these is; null where the state can be.',
    }),
    points: z.array(pointJson),
    lines: z.array(lineJson),
    nozzles: z.array(nozzleJson),
    pumps: z.array(pumpJson),
    returns: returnsJson,
    tank: tankClockJson,
    heat: heatJson,
    supply: supplyJson.nullable(),
    portable_tanks: z.array(portableTankJson),
    profiles: z.array(profileJson),
    line_control: lineControlJson.nullable(),
    habits: z.array(habitJson),
    hose_without_limit: z
      .array(z.string())
      .meta({ description: 'Hose on the ground of which no limit is known.' }),
    cases: z.array(caseJson),
    cautions: z.array(cautionJson),
    assumptions: z.array(statementJson),
    solver: solverJson,
  })
  .meta({
    title: 'Answer of pumpyoke flow',
    description: 'What flows where, and at what pressure, with everything as it stands.',
  });

export { type ReachJson, type RequireJson, reachJson, requireJson } from './json-schema-field.js';

export { type AdvanceJson, advanceJson, type ClockJson, clockJson } from './json-schema-lay.js';

export const answerJson = z.discriminatedUnion('question', [
  checkJson,
  flowJson,
  requireJson,
  reachJson,
  advanceJson,
  clockJson,
]);

export type CheckJson = z.infer<typeof checkJson>;
export type FlowJson = z.infer<typeof flowJson>;
