import * as z from 'zod';

/** What the shapes of several answers have in common. */

export const quantityJson = (what: string) =>
  z.strictObject({ value: z.number(), unit: z.string() }).meta({ description: what });

export const maybe = (what: string) => quantityJson(what).nullable();

export const stagingName = z.enum(['parallel', 'series', 'series_reversed', 'a', 'b', 'separate']).meta({
  description: 'How the two pumps are staged; a and b are one pump alone.',
});

export const verdict = z.enum(['meets', 'falls_short']);

export const statementJson = z
  .strictObject({ text: z.string(), source: z.string().nullable() })
  .meta({ description: 'What the answer rests on, in the units of the answer, with its source.' });

export const siteJson = z
  .strictObject({
    elevation: quantityJson('Above sea level.'),
    air_temperature: quantityJson('Of the air that the engines breathe.'),
    water_temperature: quantityJson('Of the water that is pumped.'),
    water_density: quantityJson('At that temperature.'),
    vapour_pressure: quantityJson('Absolute, at that temperature.'),
    atmospheric_pressure: quantityJson('Absolute, at that elevation.'),
  })
  .meta({ description: 'The place and its weather.' });

export const cautionJson = z
  .strictObject({
    code: z.string().meta({ description: 'Stable name of the rule.' }),
    level: z.enum(['stop', 'warn', 'note']).meta({ description: 'stop: do not run it so.' }),
    at: z.string().meta({ description: 'The part that it is about.' }),
    value: maybe('What was found; null where the rule has no number.'),
    limit: maybe('What it is held against; null where the rule has no number.'),
    message: z.string(),
    action: z.string().meta({ description: 'What to do about it.' }),
    source: z.string(),
  })
  .meta({ description: 'Something unsafe or doubtful; the list has the most dangerous first.' });

export const solverJson = z
  .strictObject({
    iterations: z.int(),
    flow_residual: quantityJson('Worst imbalance at a junction.'),
    energy_residual: quantityJson('Worst energy residual of a part, as pressure.'),
  })
  .meta({ description: 'How closely the network was solved.' });

export const impossibleJson = z
  .strictObject({
    code: z.enum(['water_parts', 'hose_flat', 'past_curve', 'suction_short']),
    at: z.string().meta({ description: 'Where.' }),
    reason: z.string().meta({ description: 'Why, in a clause.' }),
    source: z.string(),
  })
  .nullable()
  .meta({ description: 'Why the state cannot be, so that no figure of it is given; null where it can.' });

export const impossiblesJson = z.array(impossibleJson.unwrap()).meta({
  description: 'Why the state asked about cannot be, so that no figure of it is given; empty where it can.',
});

export const format = z.literal(1).meta({ description: 'Changes only when a shape breaks.' });

/** What every answer to a question of a layout begins with. */
export const headJson = <Q extends string>(question: Q) => ({
  format,
  question: z.literal(question),
  title: z.string(),
  engine: z.string(),
  site: siteJson,
});

export const shareJson = z.strictObject({
  pump: z.string(),
  flow: quantityJson('To the discharge, its own cooling line left out.'),
  cooling_flow: maybe('Back to the tank by its own cooling line; null where it has none.'),
  share: quantityJson('Of what the pumps give to the discharge.'),
});

export const reason = z.string().nullable().meta({ description: 'Why a figure of this is null.' });
