import type { CheckAnswer } from '../../study/answer.js';
import { type Block, type Cell, heading, paragraph } from '../document.js';
import type { Figures } from '../figures.js';
import { toldFlow } from '../required.js';
import { statementText } from '../sentence.js';
import { NO_STATE_WORDS } from '../standing.js';
import { STAGING_WORDS, verdictCell } from '../words.js';

type Suction = NonNullable<CheckAnswer['suction']>;

const BASIS = {
  file: 'its file',
  file_extended: 'its file, carried on',
  lift_practice: 'lift practice',
} as const;

const vacuumText = (vacuum: number | undefined, figures: Figures): string =>
  vacuum === undefined
    ? NO_STATE_WORDS.water_parts
    : vacuum > 0
      ? figures.say('suction.vacuum', 'pressure', vacuum, { role: 'vacuum' })
      : 'none';

function pumpRow(pump: Suction['pumps'][number], figures: Figures): Cell[] {
  const short = pump.available < pump.needed;
  const available =
    pump.available <= 0
      ? 'none:'
      : figures.say('suction.available', 'length', pump.available, { limit: pump.needed });
  return [
    pump.pump,
    short ? { text: `${available} SHORT`, tone: 'bad' } : available,
    `${figures.say('suction.needed', 'length', pump.needed)}, ${BASIS[pump.basis]}`,
    pump.available <= 0
      ? { text: NO_STATE_WORDS.water_parts, tone: 'bad' }
      : vacuumText(pump.vacuum, figures),
    pump.cavitatesFrom === undefined
      ? 'not on its curve'
      : figures.say('suction.cavitates_from', 'flow', pump.cavitatesFrom),
  ];
}

function tankRow(line: Suction['tank'][number], figures: Figures): Cell[] {
  return [
    line.level === 1 ? 'full' : `${figures.say('suction.tank.drawn', 'ratio', 1 - line.level)} drawn`,
    verdictCell(line.verdict),
    line.margin === undefined
      ? { text: line.refusal ? statementText(line.refusal, figures) : 'none is drawn', tone: 'bad' as const }
      : `${figures.say('suction.tank.margin', 'length', line.margin, { limit: 0 })}, ${line.pump}`,
    line.vacuum === undefined ? '' : vacuumText(line.vacuum, figures),
  ];
}

function liftRow(line: NonNullable<Suction['lift']>['rows'][number], figures: Figures): Cell[] {
  const why =
    line.limit === 'end_of_curve'
      ? `${line.pump} ends its curve`
      : `${line.pump} cavitates by ${BASIS[line.basis]}`;
  return [
    STAGING_WORDS[line.staging],
    figures.say('suction.lift.most', 'flow', line.most),
    vacuumText(line.vacuum, figures),
    why,
  ];
}

/** Suction: what each pump has and needs, as the tank empties, and from the lift that the typing asks for. */
export function suctionSection(answer: CheckAnswer, figures: Figures): Block[] {
  const { suction } = answer;
  if (suction === undefined) return [];
  const { pumps, tank, lift } = suction;
  const blocks: Block[] = [
    heading(`Suction at ${toldFlow(answer, figures)}`),
    {
      kind: 'table',
      columns: [
        { title: 'Pump' },
        { title: 'Head', align: 'right' },
        { title: 'Needs', align: 'right' },
        { title: 'Vacuum', align: 'right' },
        { title: 'Cavitates from', align: 'right' },
      ],
      rows: pumps.map((pump) => pumpRow(pump, figures)),
    },
  ];
  if (pumps.some(({ basis }) => basis === 'lift_practice')) {
    blocks.push(
      paragraph(
        'Lift practice: a pump is counted on to two thirds of the theoretical lift, so that a third of it has to be left. Source: NWCG Firefighter Math 3.5.',
        'quiet',
      ),
    );
  }
  if (tank.length > 0) {
    blocks.push({
      kind: 'table',
      columns: [
        { title: 'Tank' },
        { title: 'Pumps' },
        { title: 'Suction head to spare', align: 'right' },
        { title: 'Vacuum', align: 'right' },
      ],
      rows: tank.map((line) => tankRow(line, figures)),
    });
  }
  if (lift === undefined) return blocks;
  const height = figures.stated('suction.lift.lift', { value: lift.lift, dimension: 'length' });
  const attainable = figures.say('suction.lift.attainable', 'length', lift.attainable);
  const counted = lift.hoseStated
    ? 'with the suction hose of the layout'
    : "with height and the engine's own intake alone, as the layout describes no suction hose";
  return [
    ...blocks,
    paragraph(
      `From the lift of ${height} that the typing asks for, ${counted}; the lift attainable here is ${attainable} (NWCG Firefighter Math 3.5). That it primes has to be shown.`,
    ),
    {
      kind: 'table',
      columns: [
        { title: 'Staging' },
        { title: 'Most flow', align: 'right' },
        { title: 'Vacuum', align: 'right' },
        { title: 'There' },
      ],
      rows: lift.rows.map((line) => liftRow(line, figures)),
    },
  ];
}
