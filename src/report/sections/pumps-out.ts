import type { CheckAnswer } from '../../study/answer.js';
import type { PumpOutAnswer, StandingPump } from '../../study/engine-answer.js';
import { type Block, type Cell, heading, type ListItem, paragraph } from '../document.js';
import type { Figures } from '../figures.js';
import { requiredPressure } from '../required.js';
import { statementText } from '../sentence.js';
import { listed, STAGING_WORDS, verdictCell } from '../words.js';

type TypeMet = PumpOutAnswer['types'][number];

/** What of a type is made: its pumps alone, where the rest of it falls short or is not told. */
function made({ title, inventory, missing, margin }: TypeMet, figures: Figures): string {
  const said = `${title} ${figures.margin('pumps_out.types.margin', 'pressure', margin)}`;
  if (inventory === 'falls_short') return `${said}, pumps only: short of ${listed(missing)}`;
  return inventory === 'not_stated' ? `${said}, pumps only: the rest is not stated` : said;
}

const briefly = ({ class: name, inventory }: TypeMet): string =>
  inventory === 'meets' ? name : `${name} (pumps only)`;

function row({ out, staging, verdict, types }: PumpOutAnswer, figures: Figures): Cell[] {
  const [best] = types;
  return [
    out,
    STAGING_WORDS[staging],
    verdictCell(verdict),
    best ? made(best, figures) : { text: 'none', tone: 'bad' },
    types.slice(1).map(briefly).join(', '),
  ];
}

function leftText({ reaches, flow, refusal }: StandingPump, figures: Figures): string {
  if (!reaches) return 'the other never reaches it';
  if (flow === undefined)
    return refusal
      ? `what the other gives cannot be told, as ${statementText(refusal, figures)}`
      : 'what the other gives cannot be told';
  return `the other gives ${figures.say('pumps_out.standing.flow', 'flow', flow)}`;
}

function standingText(one: StandingPump, figures: Figures): string {
  const left = leftText(one, figures);
  if (one.check === 'works') return `in ${one.staging}, ${left}`;
  const back = one.backflow ?? one.backflowShut;
  if (back === undefined)
    return `with its check valve stuck open water runs back through it, how much is not known, and ${left}`;
  const said = figures.say('pumps_out.standing.backflow', 'flow', back);
  return `with its check valve stuck open ${said} runs back through it, and ${left}`;
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
