import type { CheckAnswer } from '../../study/answer.js';
import type { PumpOutAnswer, StandingPump } from '../../study/engine-answer.js';
import { type Block, type Cell, heading, type ListItem, paragraph } from '../document.js';
import type { Figures } from '../figures.js';
import { impossibleText } from '../impossible.js';
import { requiredPressure } from '../required.js';
import { listed, STAGING_WORDS, verdictCell } from '../words.js';

function row({ out, staging, verdict, types }: PumpOutAnswer, figures: Figures): Cell[] {
  const [best] = types;
  const margin = best && figures.margin('pumps_out.types.margin', 'pressure', best.margin);
  return [
    out,
    STAGING_WORDS[staging],
    verdictCell(verdict),
    best ? `${best.title} ${margin}${restOf(best)}` : { text: 'none', tone: 'bad' },
    types
      .slice(1)
      .map((type) => `${type.class}${restOf(type)}`)
      .join(', '),
  ];
}

/** What else the type asks that the engine has not got: a pump alone makes no type. */
function restOf({ inventory, missing }: PumpOutAnswer['types'][number]): string {
  if (inventory === 'falls_short') return ` (pump only: short of ${listed(missing)})`;
  return inventory === 'not_stated' ? ' (rest not stated)' : '';
}

function standingText(one: StandingPump, figures: Figures): string {
  const left =
    one.flow === undefined
      ? one.impossible
        ? `cannot: ${impossibleText(one.impossible, figures)}`
        : 'never reaches it'
      : `gives ${figures.say('pumps_out.standing.flow', 'flow', one.flow)}`;
  if (one.check === 'works') return `in ${one.staging}, the other ${left}`;
  const flow = one.backflow ?? one.backflowShut;
  if (flow === undefined) return `with its check valve stuck open, the other ${left}`;
  const back = figures.say('pumps_out.standing.backflow', 'flow', flow);
  return `with its check valve stuck open ${back} runs back through it, and the other ${left}`;
}

function standingItem({ out, standing }: PumpOutAnswer, pressure: string, figures: Figures): ListItem {
  const texts = standing.map((one) => standingText(one, figures));
  return { lines: [`${out} stopped with its valves open, at ${pressure}: ${texts.join('; ')}.`] };
}

/** What the engine still makes with either pump out. */
export function pumpsOutSection(answer: CheckAnswer, figures: Figures): Block[] {
  const { pumpsOut } = answer;
  if (pumpsOut.length === 0) return [];
  const pressure = requiredPressure(answer, figures);
  return [
    heading('One pump out'),
    {
      kind: 'table',
      columns: [
        { title: 'Out' },
        { title: 'Left' },
        { title: 'Verdict' },
        { title: 'Still makes' },
        { title: 'And' },
      ],
      rows: pumpsOut.map((one) => row(one, figures)),
    },
    { kind: 'list', items: pumpsOut.map((one) => standingItem(one, pressure, figures)) },
    paragraph(
      'A pump that stands passes water either way and loses at its last flow what its curve falls by (common practice, no source).',
      'quiet',
    ),
  ];
}
