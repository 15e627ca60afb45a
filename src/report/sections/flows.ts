import type { FlowAnswer, LineAnswer, NozzleAnswer, SiteConditions } from '../../study/answer.js';
import { type Block, type Cell, heading, paragraph } from '../document.js';
import type { Figures } from '../figures.js';
import { impossibleLines, impossibleText } from '../impossible.js';
import { of } from '../required.js';
import { noState, noStateAtNozzle, standingCell } from '../standing.js';
import { counted, listed, STAGING_PHRASES, sentence } from '../words.js';
import { stopLine } from './verdict.js';

/** The answer in one line: how much leaves, through what, and what is out of its range. */
export function flowHeadline(answer: FlowAnswer, figures: Figures): Block[] {
  const open = answer.nozzles.filter((nozzle) => nozzle.state === 'open');
  const off = open.filter((nozzle) => nozzle.inRange === false).map((nozzle) => nozzle.name);
  const total = figures.say('total_flow', 'flow', answer.totalFlow);
  const through = open.length > 0 ? ` through ${counted(open.length, 'open nozzle')}` : '';
  const range = off.length > 0 ? `; out of working range: ${listed(off)}` : '';
  const dry = open.filter((nozzle) => nozzle.flow <= 0).map((nozzle) => nozzle.name);
  const none = open.length > 0 && dry.length === open.length;
  const stops = answer.cautions.some((caution) => caution.level === 'stop');
  const [why] = answer.impossible;
  return [
    {
      kind: 'heading',
      level: 1,
      text: why
        ? `CANNOT FLOW SO ${STAGING_PHRASES[answer.staging]}: ${impossibleText(why, figures)}`
        : none
          ? `NO WATER leaves ${STAGING_PHRASES[answer.staging]}: none reaches ${listed(dry)}`
          : `FLOWS ${total} ${STAGING_PHRASES[answer.staging]}${through}${dry.length > 0 ? `; NO WATER at ${listed(dry)}` : ''}${range}`,
      tone: none || why ? 'bad' : off.length > 0 || dry.length > 0 || stops ? 'care' : 'good',
    },
    ...impossibleLines(answer.impossible, figures),
    ...stopLine(answer.cautions),
  ];
}

function rangeText({ range, pressure }: NozzleAnswer, figures: Figures): string {
  const from =
    range?.from === undefined
      ? ''
      : figures.stated('nozzles.range.from', of('pressure', range.from), [pressure]);
  const to =
    range?.to === undefined ? '' : figures.stated('nozzles.range.to', of('pressure', range.to), [pressure]);
  if (from && to) return `${from} to ${to}`;
  return from ? `from ${from}` : to && `up to ${to}`;
}

function rangeCell(nozzle: NozzleAnswer, figures: Figures): Cell {
  if (nozzle.state === 'shut') return 'shut';
  if (nozzle.inRange === undefined) return 'range not known';
  const range = rangeText(nozzle, figures);
  return nozzle.inRange
    ? { text: 'in range', tone: 'good' }
    : { text: `OUT OF RANGE${range ? ` (${range})` : ''}`, tone: 'bad' };
}

function nozzleRow(nozzle: NozzleAnswer, figures: Figures, site: SiteConditions): Cell[] {
  const { name, flow, pressure, reaction, reach } = nozzle;
  return [
    name,
    figures.say('nozzles.flow', 'flow', flow),
    standingCell(noStateAtNozzle(nozzle, site), 'nozzles.pressure', pressure, figures),
    reaction === undefined ? '' : figures.say('nozzles.reaction', 'force', reaction),
    reach === undefined ? '' : figures.say('nozzles.reach', 'length', reach),
    rangeCell(nozzle, figures),
  ];
}

export function nozzlesSection(
  { nozzles, site }: { nozzles: NozzleAnswer[]; site: SiteConditions },
  figures: Figures,
): Block[] {
  if (nozzles.length === 0) return [];
  const sources = new Set(nozzles.flatMap(({ range }) => (range ? [range.source] : [])));
  const blocks: Block[] = [
    heading('At the nozzles'),
    {
      kind: 'table',
      columns: [
        { title: 'Nozzle' },
        { title: 'Flow', align: 'right' },
        { title: 'Pressure', align: 'right' },
        { title: 'Reaction', align: 'right' },
        { title: 'Reach', align: 'right' },
        { title: 'Working range' },
      ],
      rows: nozzles.map((nozzle) => nozzleRow(nozzle, figures, site)),
    },
  ];
  const tees = nozzles.filter(({ reads }) => reads === 'static_in_tee').map(({ name }) => name);
  if (tees.length > 0) {
    blocks.push(
      paragraph(
        `Pressure of ${listed(tees)}: static, as the gauge in the tee before the orifice reads it.`,
        'quiet',
      ),
    );
  }
  if (nozzles.some(({ state, reach }) => state === 'open' && reach === undefined)) {
    blocks.push(
      paragraph(
        'No reach is given where no published rule holds: for fog, for tips under 3/4 in, at nozzle pressures of 30 psi and less.',
        'quiet',
      ),
    );
  }
  if (sources.size > 0)
    blocks.push(paragraph(`Source of the ranges: ${sentence([...sources].join('; '))}`, 'quiet'));
  return blocks;
}

function lineRow(line: LineAnswer, figures: Figures, site: SiteConditions): Cell[] {
  const { name, flow, velocity, loss, inletPressure, outletPressure } = line;
  return [
    name,
    figures.say('lines.flow', 'flow', flow),
    velocity === undefined ? '' : figures.say('lines.velocity', 'velocity', velocity),
    figures.say('lines.loss', 'pressure', loss),
    standingCell(noState(inletPressure, site, flow), 'lines.inlet_pressure', inletPressure, figures),
    standingCell(noState(outletPressure, site, flow), 'lines.outlet_pressure', outletPressure, figures),
  ];
}

/** In the order that water meets them. */
export function linesSection(
  { lines, site }: { lines: LineAnswer[]; site: SiteConditions },
  figures: Figures,
): Block[] {
  if (lines.length === 0) return [];
  return [
    heading('Along the lines, as the water meets them'),
    {
      kind: 'table',
      columns: [
        { title: 'Part' },
        { title: 'Flow', align: 'right' },
        { title: 'Velocity', align: 'right' },
        { title: 'Loss', align: 'right' },
        { title: 'In', align: 'right' },
        { title: 'Out', align: 'right' },
      ],
      rows: lines.map((line) => lineRow(line, figures, site)),
    },
  ];
}

/** Of hose without a limit nothing says what it bears, and that is said. */
export function hoseLimitSection(names: readonly string[]): Block[] {
  if (names.length === 0) return [];
  return [
    paragraph(
      `Limit not known of ${listed([...names])}: neither its working nor its service test pressure is stated, so that no pressure in it is judged.`,
      'care',
    ),
  ];
}

export function tankSection(tank: FlowAnswer['tank'], figures: Figures): Block[] {
  if (!tank) return [];
  const say = (field: string, value: number) => figures.say(`tank.${field}`, 'volume', value);
  const taken = `${say('hose_fill', tank.hoseFill)} fill the hose first and ${say('reserve', tank.reserve)} are kept back, which leaves ${say('usable', tank.usable)} of ${say('capacity', tank.capacity)}.`;
  const lasts =
    tank.endurance === null
      ? 'At this flow it does not run down.'
      : `As it runs down it lasts ${figures.say('tank.endurance', 'time', tank.endurance)}${endsText(tank, figures)}.`;
  return [heading('Tank'), paragraph(`${taken} ${lasts} Source: ${sentence(tank.source)}`)];
}

/** What ends the flow before the tank is down to its reserve. */
export function endsText({ ends }: NonNullable<FlowAnswer['tank']>, figures: Figures): string {
  if (!ends) return '';
  return `, and ends with ${figures.say('tank.ends.left', 'volume', ends.left)} left: ${impossibleText(ends.why, figures)}`;
}
