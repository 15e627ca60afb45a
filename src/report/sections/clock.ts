import type { ClockAnswer, FuelClock, ShuttleGap } from '../../study/answer.js';
import { type Block, heading, paragraph } from '../document.js';
import type { Figures } from '../figures.js';
import { impossibleLines, impossibleText } from '../impossible.js';
import { counted, STAGING_PHRASES, sentence } from '../words.js';
import { endsText } from './flows.js';
import { stopLine } from './verdict.js';

/** The answer in one line: how long the water lasts, and what ends it. */
export function clockHeadline(answer: ClockAnswer, figures: Figures): Block[] {
  const { tank, shuttle, totalFlow, impossible } = answer;
  if (impossible.length > 0)
    return [
      {
        kind: 'heading',
        level: 1,
        text: `CANNOT FLOW SO ${STAGING_PHRASES[answer.staging]}: ${impossibleText(impossible[0], figures)}`,
        tone: 'bad',
      },
      ...impossibleLines(impossible, figures),
      ...stopLine(answer.cautions),
    ];
  const flow = figures.say('total_flow', 'flow', totalFlow);
  const own =
    tank === undefined
      ? `WATER does not come from the tank; ${flow} flows`
      : tank.endurance === null
        ? 'WATER does not run down: nothing is drawn'
        : `WATER LASTS ${figures.say('tank.endurance', 'time', tank.endurance)} from the tank alone, at ${figures.say('tank.flow_full', 'flow', tank.flowFull)} drawn${endsText(tank, figures)}`;
  const fed =
    shuttle === undefined
      ? ''
      : shuttle.gap === undefined
        ? `; with ${counted(shuttle.tenders, 'tender')} no gap in ${figures.say('shuttle.horizon', 'time', shuttle.horizon, { unit: 'h' })}`
        : `; with ${counted(shuttle.tenders, 'tender')} it first fails after ${figures.say('shuttle.first_gap', 'time', shuttle.gap.from)}${untilText(shuttle.gap, figures)}`;
  const care = tank !== undefined && tank.endurance !== null && shuttle?.gap !== undefined;
  return [
    { kind: 'heading', level: 1, text: own + fed, tone: care || !shuttle ? 'care' : 'good' },
    ...stopLine(answer.cautions),
  ];
}

/** When the next tender is in, and how long there is no water until then. */
function untilText({ from, until }: ShuttleGap, figures: Figures): string {
  if (until === undefined) return ', while a tender dumps less than is drawn';
  const time = (field: string, value: number) => figures.say(`shuttle.${field}`, 'time', value);
  return `, and the next tender is in at ${time('next_tender', until)}: ${time('gap_lasts', until - from)} without water`;
}

export function tankClockSection({ tank }: ClockAnswer, figures: Figures): Block[] {
  if (!tank) return [];
  const rows = [
    ['Tank, full', figures.say('tank.capacity', 'volume', tank.capacity)],
    ['Kept back', figures.say('tank.reserve', 'volume', tank.reserve)],
    ['Fills the hose first', figures.say('tank.hose_fill', 'volume', tank.hoseFill)],
    ['Left to flow', figures.say('tank.usable', 'volume', tank.usable)],
    ['Drawn from a full tank', figures.say('tank.flow_full', 'flow', tank.flowFull, { decimals: 1 })],
    ['Drawn at the reserve', figures.say('tank.flow_low', 'flow', tank.flowLow, { decimals: 1 })],
  ];
  if (tank.endurance !== null && tank.flowTimesMinutes !== null)
    rows.push(
      [
        tank.ends ? 'Lasts, until the flow ends' : 'Lasts',
        figures.say('tank.endurance', 'time', tank.endurance),
      ],
      ['By flow times minutes', figures.say('tank.flow_times_minutes', 'time', tank.flowTimesMinutes)],
    );
  return [
    heading('Water on board'),
    { kind: 'table', columns: [{ title: '' }, { title: '', align: 'right' }], rows },
    paragraph(`Source of the reserve: ${sentence(tank.source)}`, 'quiet'),
  ];
}

export function shuttleSection({ shuttle }: ClockAnswer, figures: Figures): Block[] {
  if (!shuttle) return [];
  const { drawn, sustained, needed, gap: fails, tenders } = shuttle;
  const time = (field: string, value: number) => figures.say(field, 'time', value);
  const how = shuttle.byFormula
    ? 'by the 35 mph formula, 0.65 min and 1.7 min a mile each way; mountain roads are slower'
    : 'by the speed stated';
  const holds = sustained >= drawn;
  const verdict = `${counted(tenders, 'tender')} sustain ${figures.say('shuttle.sustained', 'flow', sustained, { limit: drawn })}, and ${figures.say('shuttle.drawn', 'flow', drawn)} is drawn.`;
  const want =
    needed === undefined
      ? 'No number of tenders sustains it with one fill and one dump site.'
      : holds
        ? needed < tenders
          ? `${needed} would do.`
          : 'Fewer would not do.'
        : `It takes ${counted(needed, 'tender')}.`;
  const gap =
    fails === undefined
      ? `No gap in ${figures.say('shuttle.horizon', 'time', shuttle.horizon, { unit: 'h' })}.`
      : `The water first fails ${time('shuttle.first_gap', fails.from)} after it is turned on${untilText(fails, figures)}.`;
  return [
    heading('Tender shuttle'),
    {
      kind: 'table',
      columns: [
        { title: 'One round' },
        { title: 'Fill', align: 'right' },
        { title: 'Road there', align: 'right' },
        { title: 'Dump', align: 'right' },
        { title: 'Road back', align: 'right' },
        { title: 'In all', align: 'right' },
      ],
      rows: [
        [
          `${figures.say('shuttle.load', 'volume', shuttle.load)} delivered`,
          time('shuttle.fill', shuttle.fill),
          time('shuttle.there', shuttle.there),
          time('shuttle.dump', shuttle.dump),
          time('shuttle.back', shuttle.back),
          time('shuttle.cycle', shuttle.cycle),
        ],
      ],
    },
    paragraph(`${verdict} ${want} ${gap}`, holds && fails === undefined ? 'good' : 'care'),
    paragraph(`Road time ${how}. Source: ${sentence(shuttle.source)}`, 'quiet'),
  ];
}

function fuelRow({ pump, burn, basis, onBoard, lasts }: FuelClock, figures: Figures): string[] {
  const at = basis === 'rated' ? 'rated power' : 'power drawn';
  return [
    pump,
    burn === undefined ? 'not known' : figures.say('fuel.burn', 'flow', burn, { role: 'burn', decimals: 1 }),
    burn === undefined ? '' : at,
    onBoard === undefined ? 'not stated' : figures.say('fuel.on_board', 'volume', onBoard, { decimals: 1 }),
    lasts === undefined ? 'not known' : figures.say('fuel.lasts', 'time', lasts),
  ];
}

export function fuelSection({ fuel, firstRefuelling }: ClockAnswer, figures: Figures): Block[] {
  if (fuel.length === 0) return [];
  const sources = [...new Set(fuel.map(({ source }) => source))];
  return [
    heading('Fuel'),
    {
      kind: 'table',
      columns: [
        { title: 'Pump' },
        { title: 'Burns', align: 'right' },
        { title: 'at' },
        { title: 'On board', align: 'right' },
        { title: 'Lasts', align: 'right' },
      ],
      rows: fuel.map((one) => fuelRow(one, figures)),
    },
    paragraph(
      firstRefuelling
        ? `First refuelling: ${firstRefuelling.pump}, before ${figures.say('first_refuelling.at', 'time', firstRefuelling.at)}. Stop it and let it cool first.`
        : 'When to refuel is not known: state fuel_tank for each pump, and what it burns.',
    ),
    paragraph(`Source of the burn: ${sentence(sources.join('; '))}`, 'quiet'),
  ];
}
