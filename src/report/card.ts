import type { UnitSystem } from '../quantity/format.js';
import type { CardAnswer } from '../study/card.js';
import type { CardPoint } from '../study/card-points.js';
import { columnsOf } from './columns.js';
import { cellText } from './document.js';
import { type Figures, figuresIn } from './figures.js';
import { impossibleText } from './impossible.js';
import { plain } from './plain.js';
import { limitText } from './sections/advance.js';
import { endsText } from './sections/flows.js';
import { cautionText } from './sentence.js';
import { noState, standingCell } from './standing.js';
import { counted, LEVEL_WORDS, listed, STAGING_PHRASES, sentence } from './words.js';
import { wrap, wrapHanging } from './wrap.js';

/** One page of plain text that can be pinned up and read out on the radio. */
const WIDTH = 60;
/** Lines of a page at six to the inch, with a margin. */
const PAGE = 60;
/** Points of the line that a page has room for. */
const MOST_POINTS = 14;
const MOST_WARNINGS = 4;

const RULE = '-'.repeat(WIDTH);

/** The card of a lay; `date` is printed as it is given. */
export function cardText(card: CardAnswer, units: UnitSystem, date: string): string {
  const figures = figuresIn(units);
  if (card.flow.impossible.length > 0) return withheldText(card, figures, date);
  const head = [
    ...wrap(plain(card.flow.title).toUpperCase(), WIDTH),
    ...wrap(`${plain(card.flow.engine)}. Made ${date}.`, WIDTH),
    RULE,
    ...settingLines(card, figures),
    RULE,
    ...lineLines(card, figures),
    RULE,
    ...openLines(card, figures),
    ...waterLines(card, figures),
    ...limitLines(card, figures),
  ];
  const foot = footLines();
  const room = PAGE - head.length - foot.length - 1;
  const lines = [...head, RULE, ...warningLines(card, figures, room), ...foot];
  return `${lines.map((line) => line.trimEnd()).join('\n')}\n`;
}

/** The card of a lay that cannot flow as it stands: why, and no figure of it. */
function withheldText(card: CardAnswer, figures: Figures, date: string): string {
  const { flow } = card;
  const lines = [
    ...wrap(plain(flow.title).toUpperCase(), WIDTH),
    ...wrap(`${plain(flow.engine)}. Made ${date}.`, WIDTH),
    RULE,
    ...wrap(`DO NOT RUN IT SO. IT CANNOT FLOW ${STAGING_PHRASES[flow.staging].toUpperCase()}:`, WIDTH),
    ...flow.impossible
      .slice(0, MOST_WARNINGS)
      .flatMap((one) => wrapHanging(plain(sentence(impossibleText(one, figures))), WIDTH, '- ', '  ')),
    'No pressure, flow or time of it is told.',
    ...limitLines(card, figures),
    RULE,
    ...warningLines(card, figures, PAGE),
    ...footLines(),
  ];
  return `${lines.map((line) => line.trimEnd()).join('\n')}\n`;
}

const item = (label: string, text: string): string[] =>
  wrapHanging(text, WIDTH, `${label.padEnd(9)} `, ' '.repeat(10));

function settingLines({ flow, throttle, gauges }: CardAnswer, figures: Figures): string[] {
  const part = (field: string, value: number) => figures.say(field, 'ratio', value);
  const speeds = [
    throttle.a === undefined ? '' : `a ${part('throttle.a', throttle.a)}`,
    throttle.b === undefined ? '' : `b ${part('throttle.b', throttle.b)}`,
  ].filter(Boolean);
  const setting =
    throttle.held === undefined
      ? `throttle ${speeds.join(', ')} of governed speed`
      : `hold ${figures.say('throttle.held', 'pressure', throttle.held)} on the discharge gauge`;
  return [
    ...item('PUMPS', `${STAGING_PHRASES[flow.staging]}, ${setting}`),
    ...gauges.flatMap(({ pump, flowing, shut }) =>
      item(
        pump.toUpperCase(),
        `gauge ${figures.say('gauges.flowing', 'pressure', flowing)} flowing${shut === undefined ? '' : `, ${figures.say('gauges.shut', 'pressure', shut)} all shut`}`,
      ),
    ),
    ...item('FLOW', `${figures.say('total_flow', 'flow', flow.totalFlow)} in all`),
  ];
}

/** The points that a page has room for: the ends, the highest and the lowest, and of the rest some, evenly. */
function chosen(points: readonly CardPoint[], most: number): CardPoint[] {
  if (points.length <= most) return [...points];
  const by = (sign: number) =>
    points.reduce((kept, one, index) => (sign * one.height > sign * points[kept].height ? index : kept), 0);
  const keep = new Set([0, points.length - 1, by(1), by(-1)]);
  for (let i = 1; keep.size < most && i < most; i++) keep.add(Math.round((i * (points.length - 1)) / most));
  return points.filter((_, index) => keep.has(index));
}

function lineLines({ lines, flow }: CardAnswer, figures: Figures): string[] {
  const told = (field: string, pressure: number, flowing: number) =>
    cellText(standingCell(noState(pressure, flow.site, flowing), field, pressure, figures));
  const most = Math.max(4, Math.floor(MOST_POINTS / Math.max(1, lines.length)));
  return lines.flatMap(({ outlet, points }) => {
    const shown = chosen(points, most);
    const left = points.length - shown.length;
    const rows = shown.map(({ name, distance, height, flowing, shut }) =>
      row([
        plain(name),
        figures.say('points.distance', 'length', distance),
        figures.say('points.height', 'length', height),
        flowing === undefined ? '' : told('points.flowing', flowing, flow.totalFlow),
        shut === undefined ? '' : told('points.shut', shut, 0),
      ]),
    );
    return [
      row([`LINE ${plain(outlet)}`, 'hose', 'height', 'flowing', 'all shut']),
      ...rows,
      ...(left > 0 ? [`(${counted(left, 'more point')} between these, not shown)`] : []),
    ];
  });
}

const WIDTHS = [22, 9, 9, 10, 10];

function row(cells: string[]): string {
  return cells
    .map((cell, index) => {
      const width = WIDTHS[index];
      const text = columnsOf(cell) > width - 1 && index === 0 ? `${cell.slice(0, width - 3)}..` : cell;
      return index === 0 ? text.padEnd(width) : text.padStart(width);
    })
    .join('');
}

function openLines({ open, nozzleLeast, advance }: CardAnswer, figures: Figures): string[] {
  const least = nozzleLeast
    .map(({ name, least: one }) => `${figures.say('nozzle_least', 'pressure', one)} for ${plain(name)}`)
    .join('; ');
  const lines = item('OPEN', `${openText(open)}; ${open.now} open now`);
  if (least) lines.push(...item('NOZZLES', `need at least: ${least}`));
  if (advance?.stop) {
    lines.push(
      ...item('STOPS', sentence(`section ${advance.reached + 1}: ${limitText(advance.stop, figures)}`)),
    );
  }
  return lines;
}

/** So many names are read out; of more, how many of the farthest. */
const MOST_NAMES = 4;

function openText({ atMost, which, of }: CardAnswer['open']): string {
  if (atMost === of) return `all ${counted(of, 'nozzle')} may be open at once`;
  if (atMost === 0) return `not one of ${counted(of, 'nozzle')}, the farthest first, has what it needs`;
  const named =
    which.length <= MOST_NAMES ? `: ${listed(which.map(plain))}` : `, from ${plain(which[0])} inward`;
  return `at most the ${atMost} farthest of ${counted(of, 'nozzle')} at once${named}; others not tried`;
}

function waterLines({ tank, call, tenders }: CardAnswer, figures: Figures): string[] {
  if (!tank) return item('WATER', 'not from the tank: watch the intake gauge');
  const lasts =
    tank.endurance === null
      ? 'does not run down as it stands'
      : `${figures.say('tank.endurance', 'time', tank.endurance)} from a full tank, ${figures.say('tank.flow_full', 'flow', tank.flowFull)} drawn${endsText(tank, figures)}`;
  const lines = item(
    'WATER',
    `${lasts}; hose fill ${figures.say('tank.hose_fill', 'volume', tank.hoseFill)}, kept back ${figures.say('tank.reserve', 'volume', tank.reserve)}`,
  );
  if (call?.lead !== undefined) {
    const when = call.after > 0 ? `after ${figures.say('call.after', 'time', call.after)}` : 'AT ONCE';
    lines.push(
      ...item(
        'TENDER',
        `call ${when}, with ${figures.say('call.left', 'volume', call.left)} in the tank; called, its water is ${figures.say('call.lead', 'time', call.lead)} away${call.firstIn === undefined ? '' : `, unless it is the first, due in at ${figures.say('call.first_in', 'time', call.firstIn)}`}`,
      ),
    );
  } else if (call) {
    lines.push(
      ...item(
        'TENDER',
        `none stated: call now, for one here before ${figures.say('tank.endurance', 'time', tank.endurance ?? 0)}`,
      ),
    );
  }
  if (tenders) {
    const needed =
      tenders.needed === undefined ? 'more than one fill site' : counted(tenders.needed, 'tender');
    lines.push(
      ...item(
        'SHUTTLE',
        `${tenders.have} bring ${figures.say('tenders.sustained', 'flow', tenders.sustained)}; this lay needs ${needed}${gapText(tenders.gap, figures)}`,
      ),
    );
  }
  return lines;
}

function gapText(gap: NonNullable<CardAnswer['tenders']>['gap'], figures: Figures): string {
  if (gap === undefined) return '';
  const fails = `; NO WATER from ${figures.say('tenders.gap.from', 'time', gap.from)}`;
  return gap.until === undefined
    ? fails
    : `${fails} to ${figures.say('tenders.gap.until', 'time', gap.until)}`;
}

function limitLines({ hoseLimit, flow }: CardAnswer, figures: Figures): string[] {
  const known = hoseLimit
    ? [`never over ${figures.say('hose_limit', 'pressure', hoseLimit.pressure)} (${plain(hoseLimit.hose)})`]
    : [];
  const unknown = flow.hoseWithoutLimit.map((name) => `limit not known of ${plain(name)}`);
  const all = [...known, ...unknown];
  return all.length === 0 ? [] : item('HOSE', all.join('; '));
}

function warningLines({ flow }: CardAnswer, figures: Figures, room: number): string[] {
  const worst = flow.cautions.filter(({ level }) => level !== 'note').slice(0, MOST_WARNINGS);
  if (worst.length === 0) return ['WARNINGS  none found by the rules that this program has'];
  const lines: string[] = [];
  let said = 0;
  for (const caution of worst) {
    const [first] = cautionText(caution, 'message', figures).split('; so is it with');
    const text = wrapHanging(
      plain(sentence(first)),
      WIDTH,
      `${LEVEL_WORDS[caution.level].padEnd(5)}`,
      '     ',
    );
    if (lines.length + text.length > Math.max(2, room - 1)) break;
    lines.push(...text);
    said += 1;
  }
  const more = flow.cautions.length - said;
  if (more > 0) lines.push(`(${counted(more, 'more caution')}: ask for the whole report)`);
  return lines;
}

function footLines(): string[] {
  return [
    RULE,
    ...wrap(
      'Nobody flowing for a minute: open the bypass. Stop an engine and let it cool before refuelling. Hearing protection at the pump.',
      WIDTH,
    ),
    ...wrap(
      'Assumes hose by its published coefficients, engines at governed speed, a full tank. Pressures are what a gauge on the line reads. Heights are above the pump.',
      WIDTH,
    ),
    ...wrap("The agency, the makers' limits and what you see decide, not this.", WIDTH),
  ];
}
