import type { ReachAnswer, ReachCell, ReachRow, ReachStaging } from '../../study/answer.js';
import { type Block, heading, paragraph } from '../document.js';
import type { Figures } from '../figures.js';
import { cautionText } from '../sentence.js';
import { counted, STAGING_PHRASES, STAGING_WORDS, sentence } from '../words.js';
import { hoseLimitSection } from './flows.js';
import { stopLine } from './verdict.js';

function gradeText(grade: number, figures: Figures): string {
  if (grade === 0) return 'level';
  const size = figures.say('rows.grade', 'ratio', Math.abs(grade));
  return grade > 0 ? `${size} up` : `${size} down`;
}

/** Why not even a short lay does. */
const NOT_AT_ALL: Record<ReachCell['limit'], string> = {
  nozzle: 'not at all',
  hose: 'hose limit',
  cannot_be: 'cannot be',
  longest_looked_at: 'not at all',
  no_steady_answer: 'not found',
};

/** What ended it, where it is not the nozzle. */
const ENDED_BY: Record<ReachCell['limit'], string> = {
  nozzle: '',
  hose: ' H',
  cannot_be: ' C',
  longest_looked_at: '',
  no_steady_answer: ' C',
};

function lengthText(cell: ReachCell, { carried }: Pick<ReachAnswer, 'carried'>, figures: Figures): string {
  if (cell.length === 0) return NOT_AT_ALL[cell.limit];
  const length = figures.say('cells.length', 'length', cell.length);
  const over = cell.limit === 'longest_looked_at' ? `over ${length}` : length;
  const from = cell.from === undefined ? '' : `${figures.say('cells.from', 'length', cell.from)} to `;
  const more = carried !== undefined && cell.length > carried ? ' +' : '';
  return `${from}${over}${more}${ENDED_BY[cell.limit]}`;
}

function heightText({ length, height }: ReachCell, figures: Figures): string {
  return length === 0 ? '' : figures.say('cells.height', 'length', Math.abs(height));
}

/** In one phrase: how far, and how high. */
function cellText(cell: ReachCell, figures: Figures): string {
  const length = lengthText(cell, {}, figures);
  if (cell.length === 0 || cell.height === 0) return length;
  return `${length} and ${heightText(cell, figures)} ${cell.height > 0 ? 'high' : 'down'}`;
}

function steepest(rows: ReachRow[]): ReachRow {
  return rows.reduce((kept, row) => (row.grade > kept.grade ? row : kept));
}

/** The staging as laid, at its flattest and its steepest. */
export function reachHeadline(answer: ReachAnswer, figures: Figures): Block[] {
  const own = answer.stagings.find(({ staging }) => staging === answer.asLaid) ?? answer.stagings[0];
  const { cells, grade } = steepest(own.rows);
  const far = own.rows[0];
  const said = (row: ReachRow) => `${cellText(row.cells[0], figures)} (${gradeText(row.grade, figures)})`;
  const two = far.grade === grade ? said(far) : `${said(far)}, ${said({ cells, grade })}`;
  const none = own.rows.every((row) => row.cells.every(({ length }) => length === 0));
  const laterals = cells[0].laterals === 0 ? 'no open lateral' : counted(cells[0].laterals, 'open lateral');
  return [
    {
      kind: 'heading',
      level: 1,
      text: none
        ? `REACHES NOTHING ${STAGING_PHRASES[own.staging]}: ${two}`
        : `REACHES ${two} ${STAGING_PHRASES[own.staging]} with ${laterals}`,
      tone: none ? 'bad' : own.overHose ? 'care' : 'good',
    },
    ...stopLine(answer.cautions),
  ];
}

/** What the table is of. */
export function reachTermsSection(answer: ReachAnswer, figures: Figures): Block[] {
  const pressure = figures.say('nozzle.pressure', 'pressure', answer.nozzle.pressure);
  const throttle = figures.say('throttle', 'ratio', answer.throttle);
  const trunk = `A trunk of ${answer.hose} at one slope, with ${answer.nozzle.name} at its end at ${pressure} or more, at ${throttle} of governed speed.`;
  const lateral = answer.lateral
    ? ` Laterals part from it at even distances: ${figures.say('lateral.length', 'length', answer.lateral.length)} of ${answer.lateral.hose}, level, with ${answer.lateral.nozzle} at ${figures.say('lateral.pressure', 'pressure', answer.lateral.pressure)} or more.`
    : ' The lay has no lateral to add.';
  const carried =
    answer.carried === undefined
      ? ''
      : ` Of this hose ${figures.say('carried', 'length', answer.carried)} are carried; + marks what is longer.`;
  const { downhill } = answer;
  return [
    paragraph(`${trunk}${lateral}${carried}`),
    ...marksText(answer),
    ...hoseLimitSection(answer.hoseWithoutLimit),
    ...(downhill
      ? [
          paragraph(
            `Downhill the hose must bear more than stands at the outlet: with every nozzle shut, ${figures.say('downhill.pressure', 'pressure', downhill.pressure)} for each ${figures.say('downhill.height', 'length', downhill.height)} of height lost.`,
            'care',
          ),
        ]
      : []),
    paragraph(`Source of the nozzle pressure: ${sentence(answer.nozzle.source)}`, 'quiet'),
  ];
}

/** What the letters behind a length mean, where one stands. */
function marksText({ stagings }: ReachAnswer): Block[] {
  const cells = stagings.flatMap(({ rows }) => rows.flatMap((row) => row.cells));
  const marked = (limit: ReachCell['limit']) => cells.some((cell) => cell.length > 0 && cell.limit === limit);
  return [
    ...(marked('hose')
      ? [
          paragraph(
            'H: there the hose is at its limit, flowing or with every nozzle shut; the nozzle would go on. No farther at this throttle.',
            'care',
          ),
        ]
      : []),
    ...(marked('cannot_be')
      ? [paragraph('C: beyond it the state cannot be, as a pump or soft hose would not bear it.', 'care')]
      : []),
  ];
}

/** The hose on one line, the height that it gains under it. */
function rowsOf(grade: number, cells: ReachCell[], answer: ReachAnswer, figures: Figures): string[][] {
  const slope = gradeText(grade, figures);
  const lengths = [slope, ...cells.map((cell) => lengthText(cell, answer, figures))];
  if (grade === 0) return [lengths];
  const turn = grade > 0 ? 'height gained' : 'height lost';
  return [lengths, [`${turn}, ${slope}`, ...cells.map((cell) => heightText(cell, figures))]];
}

function tableOf(staging: ReachStaging, answer: ReachAnswer, figures: Figures): Block[] {
  const shut = figures.say('stagings.shut_pressure', 'pressure', staging.shutPressure, {
    limit: staging.overHose?.limit,
  });
  const own = staging.staging === answer.asLaid ? ', as laid out' : '';
  const limit = staging.overHose
    ? `With every nozzle shut ${shut} stand at the outlet, OVER the ${figures.say('stagings.over_hose', 'pressure', staging.overHose.limit)} of this hose: not at this throttle.`
    : `With every nozzle shut ${shut} stand at the outlet.`;
  return [
    heading(`${STAGING_WORDS[staging.staging]}${own}`),
    {
      kind: 'table',
      columns: [
        { title: 'Slope' },
        ...staging.rows[0].cells.map(({ laterals }) => ({
          title: counted(laterals, 'lateral'),
          align: 'right' as const,
        })),
      ],
      rows: staging.rows.flatMap(({ grade, cells }) => rowsOf(grade, cells, answer, figures)),
    },
    paragraph(limit, staging.overHose ? 'bad' : 'quiet'),
    ...staging.stops.map((caution) =>
      paragraph(`STOP in this staging: ${sentence(cautionText(caution, 'message', figures))}`, 'bad'),
    ),
  ];
}

/** One table a staging: slope down, open laterals across; lengths of hose along the slope, and the height gained. */
export function reachTables(answer: ReachAnswer, figures: Figures): Block[] {
  return answer.stagings.flatMap((staging) => tableOf(staging, answer, figures));
}
