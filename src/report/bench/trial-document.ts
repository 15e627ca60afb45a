import { toUnit, type UnitSystem, unitFor } from '../../quantity/format.js';
import type { ReadingAnswer, TrialAnswer } from '../../study/trial/trial-answer.js';
import type { Chart } from '../chart/chart.js';
import { type Block, type Cell, type Document, heading, paragraph, type Tone } from '../document.js';
import { type Figures, figuresIn } from '../figures.js';
import { statementText } from '../sentence.js';
import { asSentence, counted, DEFERRAL, sentence } from '../words.js';
import { chanceWords, dimensionOf, rankedWords, setUpWords, tellingWords } from './trial-words.js';

const VERDICTS: Record<TrialAnswer['verdict'], { text: string; tone: Tone }> = {
  passes: { text: 'PASSES', tone: 'good' },
  fails: { text: 'FALLS SHORT', tone: 'bad' },
  not_judged: { text: 'NOT JUDGED', tone: 'care' },
};

function headline({ verdict, judged, requirement }: TrialAnswer, figures: Figures): Block {
  const { text, tone } = VERDICTS[verdict];
  const worst = [...judged].sort((one, other) => one.margin - other.margin)[0];
  if (worst === undefined)
    return { kind: 'heading', level: 1, tone, text: `${text}: no reading here decides` };
  const read = figures.say('judged.read', 'pressure', worst.read, { limit: worst.passes });
  const passes = figures.say('judged.passes', 'pressure', worst.passes);
  const margin = figures.overOrShort('judged.margin', 'pressure', worst.margin);
  return {
    kind: 'heading',
    level: 1,
    tone,
    text: `${text} ${requirement ?? ''}: ${read} at ${worst.at}, ${passes} wanted (${margin}): ${worst.grade}`.replace(
      '  ',
      ' ',
    ),
  };
}

const OUTCOMES: Record<TrialAnswer['outcome'], string> = {
  nothing_wrong: 'All readings are as predicted; nothing points to a fault.',
  found: 'One explanation stands out.',
  cannot_tell: 'CANNOT TELL: the readings bear out several explanations about as well.',
  unexplained:
    'NOTHING KNOWN HERE EXPLAINS all readings, one cause or two: look at the sheet and the layout first.',
};

function diagnosis({ outcome, ranked, telling, alike }: TrialAnswer, figures: Figures): Block[] {
  const items = ranked
    .filter(({ chance }, i) => i === 0 || chance >= 0.005)
    .map((one, i) => ({
      lines: [`${chanceWords(one.chance)}: ${rankedWords(one, figures)}.`],
      ...(i < alike && { tone: 'care' as const }),
    }));
  const none = outcome === 'cannot_tell' && !telling;
  return [
    heading('What explains it'),
    paragraph(OUTCOMES[outcome], outcome === 'nothing_wrong' || outcome === 'found' ? undefined : 'care'),
    ...(items.length > 0 ? [{ kind: 'list' as const, marks: 'number' as const, items }] : []),
    ...(telling ? [paragraph(tellingWords(telling, figures))] : []),
    ...(none ? [paragraph('No further reading of these instruments would tell the first two apart.')] : []),
  ];
}

function row(one: ReadingAnswer, figures: Figures): Cell[] {
  const dimension = dimensionOf(one.instrument);
  const say = (value: number, options = {}) =>
    figures.say(`readings.${one.instrument}`, dimension, value, options);
  const start: Cell[] = [`${one.line} ${setUpWords(one, figures)}`, one.instrument, say(one.read)];
  if (one.predicted === undefined || one.tolerance === undefined)
    return [...start, 'not told', '', one.reason ? statementText(one.reason, figures) : ''];
  return [
    ...start,
    say(one.predicted),
    `+/- ${say(one.tolerance)}`,
    one.agrees ? 'agrees' : { text: `OFF ${say(one.read - one.predicted, { signed: true })}`, tone: 'bad' },
  ];
}

function sheet(readings: readonly ReadingAnswer[], title: string, figures: Figures): Block[] {
  return [
    heading(title),
    {
      kind: 'table',
      columns: [
        { title: 'line and set-up' },
        { title: 'gauge' },
        { title: 'read', align: 'right' },
        { title: 'predicted', align: 'right' },
        { title: 'tolerance', align: 'right' },
        { title: '' },
      ],
      rows: readings.map((one) => row(one, figures)),
    },
  ];
}

function picture(
  { band, readings, title, judged }: TrialAnswer,
  staging: string,
  { units }: Figures,
): Block[] {
  if (band.length < 2) return [];
  const flow = (si: number) => toUnit(si, unitFor('flow', units));
  const pressure = (si: number) => toUnit(si, unitFor('pressure', units));
  const tees = readings.filter(({ instrument, staging: one }) => instrument === 'tee' && one === staging);
  const spots = tees.flatMap(({ line, read, through }) =>
    through === undefined ? [] : [{ x: flow(through), y: pressure(read), label: `line ${line}` }],
  );
  const chart: Chart = {
    x: { title: 'flow', unit: unitFor('flow', units), from: 0 },
    y: { title: 'gauge in the tee of the orifice', unit: unitFor('pressure', units), from: 0 },
    layers: [
      {
        kind: 'band',
        name: 'predicted, nine in ten',
        points: band.map((at) => ({ x: flow(at.flow), low: pressure(at.low), high: pressure(at.high) })),
      },
      { kind: 'line', name: 'predicted', points: band.map((at) => [flow(at.flow), pressure(at.pressure)]) },
      { kind: 'points', name: 'read', symbol: 'circle', points: spots },
      ...judged.slice(0, 1).map(({ passes }) => ({
        kind: 'rule' as const,
        name: 'passes from here',
        axis: 'y' as const,
        at: pressure(passes),
      })),
    ],
  };
  return [{ kind: 'chart', words: `${title}: readings over the predicted band.`, chart }];
}

/** Rows that a screen has room for; the rest stands in every other look and under --all. */
const SHOWN = 12;

/** A test day for people: the verdict, what explains it, and the filled sheet. */
export function trialDocument(answer: TrialAnswer, units: UnitSystem, brief = false, all = true): Document {
  const figures = figuresIn(units);
  const { title, readings, agree, notes, assumptions, band } = answer;
  const statements = (of: TrialAnswer['notes']) =>
    of.map((one) => {
      const text = statementText(one, figures).replace(/\.$/, '');
      return one.source ? `${text} [${one.source}].` : sentence(text);
    });
  const noted: Block[] = statements(notes).map((text) => paragraph(asSentence(text), 'care'));
  const first = [headline(answer, figures), ...noted];
  if (brief) return { title, blocks: [...first, ...diagnosis(answer, figures), paragraph(DEFERRAL)] };
  const off = readings.filter(({ agrees }) => agrees !== true);
  const short = !all && readings.length > SHOWN;
  const shown = short
    ? [...off, ...readings.filter(({ agrees }) => agrees === true)].slice(0, Math.max(SHOWN, 1))
    : readings;
  const left = readings.length - shown.length;
  const staging = answer.readings.find(({ instrument }) => instrument === 'tee')?.staging ?? '';
  const judgedStaging = readings.find(({ line }) => line === answer.judged[0]?.line)?.staging ?? staging;
  return {
    title,
    blocks: [
      ...first,
      paragraph(
        `${answer.engine}${answer.date ? `, ${answer.date}` : ''}: ${agree} of ${counted(readings.length, 'reading')} agree with the prediction.`,
      ),
      ...picture({ ...answer, band }, judgedStaging, figures),
      ...diagnosis(answer, figures),
      ...sheet(shown, short ? 'The sheet, what is off first' : 'The sheet', figures),
      ...(left > 0 ? [paragraph(`${left} more agree; --all shows them.`, 'quiet')] : []),
      paragraph(`${statements(assumptions).join(' ')} ${DEFERRAL}`, 'quiet'),
    ],
  };
}
