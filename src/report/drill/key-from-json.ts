import type { Answer, Problem } from '../../drill/problem.js';
import type { DrillJson } from './json-schema.js';

type Saved = DrillJson['problems'][number];

/** The key that a sheet was saved with as JSON, by this version or another; what is wrong where it is none. */
export async function keyFromJson(
  text: string,
): Promise<{ code: string; command: string; problems: readonly Problem[] } | string> {
  const { drillJson } = await import('./json-schema.js');
  let read: unknown;
  try {
    read = JSON.parse(text);
  } catch {
    return 'not JSON; a key is saved by --key --out key.json, or by --key-out key.json';
  }
  const parsed = drillJson.loose().safeParse(read);
  if (!parsed.success) {
    const [{ path }] = parsed.error.issues;
    return `not a saved key (${path.join('.') || 'its top'} is missing or wrong); one is saved by --key-out key.json`;
  }
  const { sheet, command, problems } = parsed.data;
  return { code: sheet, command, problems: problems.map(problemOf) };
}

function answerOf({ answer, tolerance }: Saved): Answer {
  if ('word' in answer) return { kind: 'word', ...answer };
  const within = tolerance?.value ?? 0;
  const { value, unit, text } = answer;
  return {
    kind: 'number',
    value,
    unit: unit as Problem['find']['unit'],
    text,
    tolerance: within,
    toleranceText: `± ${within} ${unit}`.trim(),
  };
}

function problemOf(saved: Saved): Problem {
  const { number, id, topic, topic_title: topicTitle, level, rules, units, seed, version, question } = saved;
  return {
    ...{ number, id, topic, topicTitle, rules, units, seed, version, question },
    level: level as Problem['level'],
    given: saved.given as Problem['given'],
    constants: saved.constants as Problem['constants'],
    find: saved.find as Problem['find'],
    rulesUsed: saved.rules_used,
    steps: saved.steps as Problem['steps'],
    answer: answerOf(saved),
    slips: saved.slips,
    choices: saved.choices.map(({ slip, why, ...choice }) => ({
      ...choice,
      ...(slip === null ? {} : { slip }),
      ...(why ? { why } : {}),
    })),
  };
}
