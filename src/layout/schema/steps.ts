import * as z from 'zod';
import { applianceSchema, branchSchema } from '../../catalogue/schema/appliance.js';
import { across } from '../../catalogue/schema/bore.js';
import { checkValveSchema } from '../../catalogue/schema/check-valve.js';
import { hoseSchema } from '../../catalogue/schema/hose.js';
import { LEAST_FLOW, LEAST_PRESSURE, nozzleSchema } from '../../catalogue/schema/nozzle.js';
import { pipeSchema } from '../../catalogue/schema/pipe.js';
import { pumpSchema } from '../../catalogue/schema/pump.js';
import { text } from '../../catalogue/schema/text.js';
import { valveSchema } from '../../catalogue/schema/valve.js';
import { withArticle } from '../../quantity/article.js';
import { grouped } from '../../quantity/format.js';
import { quantity } from '../../quantity/schema.js';
import { choice, isMapping, textOrMapping, whatStands } from './choice.js';
import { misspelt, stepKeyOf } from './step-key.js';

/** Throttles a governor can be set to, as parts of governed speed; common practice, no source. */
export const LEAST_THROTTLE = 0.01;
export const MOST_THROTTLE = 1.1;
/** Hoses laid side by side as one step; common practice, no source. */
export const MOST_LINES = 6;
/** Height that a step gains or loses at the most, m (16,400 ft): from the sea to the highest roads. Common practice, no source. */
const MOST_RISE = 5000;
/** Expanded steps of one layout: room for forty thousand links, and an end to a mistyped repeat. */
export const MOST_STEPS = 100_000;

export const throttlePart = quantity('ratio', {
  atLeast: LEAST_THROTTLE,
  atMost: MOST_THROTTLE,
  example: '80 %',
  description: 'Part of governed speed',
});

/** An id of the catalogue, or a mapping that says the same things itself. */
export function idOr<S extends z.ZodType>(kind: string, schema: S) {
  const id = z
    .string({
      error: (issue) =>
        `${whatStands(issue.input)}; the id of ${withArticle(kind)} or a mapping of its own is wanted`,
    })
    .trim()
    .min(1, `nothing stands here; the id of ${withArticle(kind)} or a mapping of its own is wanted`);
  return textOrMapping(id.meta({ description: `Id of ${withArticle(kind)} in the catalogue`, kind }), schema);
}

const length = quantity('length', { positive: true, description: 'Length along the hose or pipe' });

const GRADE = /%|percent|per cent|pct/i;

/** A height gained, or a grade: the height gained in a hundred of level distance. */
const rise = choice(
  [
    quantity('length', {
      atLeast: -MOST_RISE,
      atMost: MOST_RISE,
      example: '30 ft',
      description: 'Height gained; a drop is negative',
    }),
    quantity('ratio', { example: '30 %', description: 'Grade: height gained over level distance' }).transform(
      (grade) => ({ grade }),
    ),
  ],
  (value) => (typeof value === 'string' && GRADE.test(value) ? 1 : 0),
).meta({ description: 'Height gained from start to end, or a grade such as 30 %; a drop is negative' });

const name = text.optional().meta({ description: 'What the report calls it; {n} counts repeats' });

export function wholeNumber(from: number, to: number) {
  const wanted = `a whole number from ${from} to ${grouped(to)} is wanted`;
  const error = (issue: { input?: unknown }) => `${whatStands(issue.input)}; ${wanted}`;
  return z.int({ error }).min(from, { error }).max(to, { error });
}

const isTrue = (key: string) => z.literal(true, { error: `write ${key}: true, or leave the step out` });

const hoseStep = z.lazy(() =>
  z
    .strictObject({
      hose: idOr('hose', hoseSchema),
      length,
      rise: rise.optional(),
      lines: wholeNumber(1, MOST_LINES).default(1).meta({ description: 'Hoses laid side by side' }),
      name,
    })
    .meta({ title: 'hose', description: 'Hose, lying along the ground' }),
);

const pipeStep = z.lazy(() =>
  z
    .strictObject({
      pipe: idOr('pipe', pipeSchema),
      length: length.optional(),
      rise: rise.optional(),
      fittings: z
        .record(z.string(), wholeNumber(1, 1000))
        .optional()
        .meta({ description: 'How many of each fitting of the catalogue' }),
      name,
    })
    .meta({ title: 'pipe', description: 'Rigid plumbing with its fittings' }),
);

const valveStep = z.lazy(() =>
  z
    .strictObject({
      valve: idOr('valve', valveSchema),
      open: quantity('ratio', {
        atLeast: 0,
        atMost: 1,
        example: '60 %',
        description: 'How far it is open',
      }).optional(),
      name,
    })
    .meta({ title: 'valve', description: 'A valve, part open' }),
);

const checkValveStep = z.lazy(() =>
  z
    .strictObject({ check_valve: idOr('check valve', checkValveSchema), name })
    .meta({ title: 'check_valve', description: 'Lets water one way only' }),
);

const applianceStep = z.lazy(() =>
  z
    .strictObject({ appliance: idOr('appliance', applianceSchema), name })
    .meta({ title: 'appliance', description: 'Anything else that costs pressure' }),
);

const branchStep = z.lazy(() =>
  z
    .strictObject({
      branch: idOr('branch', branchSchema),
      get to() {
        return z
          .array(
            z.strictObject({
              name: text.optional(),
              get steps() {
                return stepsSchema;
              },
            }),
          )
          .min(1, 'a branch leads to at least one line of its own')
          .meta({
            description: 'Lines of their own that start here; the steps after the branch are the main line',
          });
      },
      name,
    })
    .meta({ title: 'branch', description: 'Wye, tee or manifold' }),
);

const siameseStep = z.lazy(() =>
  z
    .strictObject({
      get siamese() {
        return z
          .array(stepsSchema)
          .min(2, 'a siamese joins at least two lines')
          .meta({ description: 'Lines that part here and meet again' });
      },
      name,
    })
    .meta({ title: 'siamese', description: 'Unlike lines that part here and meet again' }),
);

const pumpStep = z.lazy(() =>
  z
    .strictObject({
      pump: idOr('pump', pumpSchema),
      throttle: throttlePart.default(1),
      fuel_tank: quantity('volume', {
        positive: true,
        example: '5 gal',
        description: 'Fuel on board for it',
      }).optional(),
      name,
    })
    .meta({ title: 'pump', description: 'A booster in the line' }),
);

const tankStep = z.lazy(() =>
  z
    .strictObject({
      tank: quantity('volume', { positive: true, example: '1,000 gal', description: 'What it holds' }),
      name,
    })
    .meta({
      title: 'tank',
      description: 'An open portable tank: pressure ends here, a pump may draw from it',
    }),
);

const nozzleStep = z.lazy(() =>
  z
    .strictObject({
      nozzle: idOr('nozzle', nozzleSchema),
      tip: across.optional().meta({ description: 'Bore of the tip in use' }),
      flow: quantity('flow', { positive: true, atLeast: LEAST_FLOW, example: '20 gpm' })
        .optional()
        .meta({ description: 'Rating of a fog nozzle' }),
      pressure: quantity('pressure', { positive: true, atLeast: LEAST_PRESSURE, example: '100 psi' })
        .optional()
        .meta({
          description:
            'Rating of a fog nozzle, what an automatic one holds; of a smooth bore or an orifice what it is laid for, which require and the cautions hold it to',
        }),
      state: z.enum(['open', 'shut']).default('open'),
      name,
    })
    .meta({ title: 'nozzle', description: 'The end of a line' }),
);

const openEndStep = z.lazy(() =>
  z
    .strictObject({ open_end: isTrue('open_end'), name })
    .meta({ title: 'open_end', description: 'The end of a line, running free to the air' }),
);

const capStep = z.lazy(() =>
  z.strictObject({ cap: isTrue('cap'), name }).meta({ title: 'cap', description: 'A closed end' }),
);

const gaugeStep = z.lazy(() =>
  z
    .strictObject({
      gauge: text.meta({ description: 'What the report calls the point' }),
      range: quantity('pressure', { positive: true, example: '400 psi' })
        .optional()
        .meta({ description: 'Highest pressure on its dial' }),
    })
    .meta({ title: 'gauge', description: 'A point to report by name' }),
);

const repeatStep = z.lazy(() =>
  z
    .strictObject({
      repeat: wholeNumber(1, MOST_STEPS),
      get steps() {
        return stepsSchema;
      },
    })
    .meta({ title: 'repeat', description: 'The same steps again and again; {n} in a name counts them' }),
);

/** The schema of each kind of step, by the key that names the kind. */
export const STEP_SCHEMAS = {
  hose: hoseStep,
  pipe: pipeStep,
  valve: valveStep,
  check_valve: checkValveStep,
  appliance: applianceStep,
  branch: branchStep,
  siamese: siameseStep,
  pump: pumpStep,
  tank: tankStep,
  nozzle: nozzleStep,
  open_end: openEndStep,
  cap: capStep,
  gauge: gaugeStep,
  repeat: repeatStep,
} as const;

export type StepKey = keyof typeof STEP_SCHEMAS;
export const STEP_KEYS = Object.keys(STEP_SCHEMAS) as StepKey[];

const stepSchema = choice(Object.values(STEP_SCHEMAS), (value) => {
  if (!isMapping(value))
    return `${whatStands(value)}; a step is wanted, for instance { hose: ID, length: 100 ft }`;
  const key = stepKeyOf(value, STEP_KEYS);
  return key === undefined ? misspelt(value, STEP_KEYS) : STEP_KEYS.indexOf(key);
});

export const stepsSchema: z.ZodType<unknown[], unknown[]> = z
  .array(stepSchema)
  .meta({ id: 'steps', description: 'Steps in the order that water meets them' });

/** A step as its schema leaves it: SI values, an id or a model, and the steps within it unread. */
export type StepDocument = { [K in StepKey]: z.output<(typeof STEP_SCHEMAS)[K]> };
