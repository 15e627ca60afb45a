import * as z from 'zod';

const quantity = z.object({ value: z.number(), unit: z.string() });
const figure = quantity.extend({ symbol: z.string(), name: z.string(), text: z.string() });
const slip = z.object({ slip: z.string(), why: z.string() });
const either = z.union([z.number(), z.string()]);

const question = z.object({
  number: z.int().meta({ description: 'place on the sheet, from 1' }),
  id: z
    .string()
    .meta({ description: 'topic, level, rules, units and draw: enough to make the problem again' }),
  topic: z.string(),
  topic_title: z.string(),
  level: z.int().min(1).max(5),
  rules: z.string(),
  units: z.enum(['us', 'si']),
  seed: z.int(),
  version: z.string(),
  question: z.string(),
  sketch: z.string().nullable().meta({ description: 'the lay in words' }),
  given: z.array(figure),
  find: z.object({ symbol: z.string(), name: z.string(), unit: z.string() }),
  choices: z.array(z.object({ letter: z.string(), text: z.string() })),
});

const problem = question.extend({
  constants: z.array(figure.extend({ source: z.string() })).meta({ description: "the rule set's figures" }),
  rules_used: z.array(z.object({ text: z.string(), source: z.string() })),
  answer: z.union([
    quantity.extend({ text: z.string() }),
    z.object({ word: z.string(), options: z.array(z.string()), text: z.string() }),
  ]),
  tolerance: quantity.nullable().meta({ description: 'half the band that is marked right' }),
  steps: z.array(
    quantity.extend({
      say: z.string(),
      symbol: z.string(),
      formula: z.string().meta({ description: 'the expression that mathjs evaluated' }),
      substitution: z.string(),
      text: z.string(),
      rounding: z.string(),
    }),
  ),
  solver: z
    .object({ hand: quantity, answer: quantity, reason: z.string() })
    .nullable()
    .meta({ description: "the program's own solution beside the hand rule's, and the reason for the gap" }),
  slips: z.array(slip.extend({ value: either, text: z.string() })),
  choices: z.array(
    z.object({
      letter: z.string(),
      text: z.string(),
      value: either,
      right: z.boolean(),
      slip: z.string().nullable(),
      why: z.string().nullable().optional(),
    }),
  ),
});

const head = {
  format: z.literal(1),
  sheet: z.string().meta({ description: 'fingerprint of the sheet' }),
  command: z.string().meta({ description: 'makes the sheet again' }),
};

const sheet = {
  ...head,
  question: z.literal('drill'),
  version: z.string(),
  seed: z.int(),
  level: z.int(),
  units: z.enum(['us', 'si']),
  rules: z.object({ name: z.string(), title: z.string(), source: z.string() }),
};

/** What `drill --json` prints. */
export const drillJson = z.strictObject({ ...sheet, problems: z.array(problem) });

/** What `drill --json` prints where the key is written apart. */
export const drillQuestionsJson = z.strictObject({
  ...sheet,
  problems: z.array(z.strictObject(question.shape)),
});

const topic = z.object({
  topic: z.string(),
  topic_title: z.string(),
  right: z.int(),
  wrong: z.int(),
  blank: z.int(),
  slips: z.array(slip.extend({ count: z.int() })),
});

/** What `drill mark --json` prints. */
export const drillMarkJson = z.strictObject({
  ...head,
  question: z.literal('drill mark'),
  pass: z.number().nullable(),
  students: z.array(
    z.object({
      student: z.string(),
      right: z.int(),
      of: z.int(),
      percent: z.number(),
      passed: z.boolean().nullable(),
      answers: z.array(
        z.object({
          number: z.int(),
          id: z.string(),
          topic: z.string(),
          given: z.string(),
          verdict: z.enum(['right', 'wrong', 'blank', 'unreadable']),
          read: z.union([quantity, either]).nullable(),
          right_answer: z.string(),
          slip: slip.nullable(),
          note: z.string().nullable(),
        }),
      ),
      topics: z.array(topic),
      teach_again: z.array(z.string()),
    }),
  ),
  topics: z.array(topic),
  teach_again: z.array(z.string()),
  notes: z.array(z.string()),
});

export type DrillJson = z.infer<typeof drillJson>;
export type DrillMarkJson = z.infer<typeof drillMarkJson>;
