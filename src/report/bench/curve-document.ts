import { toUnit, type UnitSystem, unitFor } from '../../quantity/format.js';
import type { Statement } from '../../study/answer.js';
import type { CurveAnswer, WearAnswer } from '../../study/bench/curve-answer.js';
import type { Chart } from '../chart/chart.js';
import { type Block, type Cell, type Document, heading, paragraph } from '../document.js';
import { type Figures, figuresIn } from '../figures.js';
import { statementText } from '../sentence.js';
import { asSentence, DEFERRAL, sentence } from '../words.js';

export const SHAPE_WORDS: Record<CurveAnswer['shape'], string> = {
  power: 'A - B Q^C',
  quadratic: 'of the second degree',
  monotone: 'of the third degree, falling',
};

const LIES: Record<WearAnswer['lies'], string> = {
  evenly: 'about evenly along the curve',
  at_large_flows: 'growing with flow',
  at_small_flows: 'most near shutoff',
};

/** `3.2 %`: wear is told to a tenth. */
const percent = (part: number): string => `${(Math.abs(part) * 100).toFixed(1)} %`;

const signed = (part: number): string => `${(part * 100).toFixed(1)} %`;

function wearSentence({ name, wear, low, high, proven, lies }: WearAnswer, confidence: number): string {
  const interval = `${signed(low)} to ${signed(high)} at ${(confidence * 100).toFixed(0)} %`;
  if (!proven) return `Beside ${name} no loss of pressure is proven: ${signed(wear)} (${interval}).`;
  if (wear < 0) return `It makes ${percent(wear)} more than ${name} (loss ${interval}).`;
  return `It has lost ${percent(wear)} of the pressure of ${name} (${interval}), ${LIES[lies]}.`;
}

function verdictLine({ wear, confidence, shutoff, curve }: CurveAnswer, figures: Figures): string {
  if (wear) return wearSentence(wear, confidence);
  const end = curve[curve.length - 1];
  return `The pump makes ${figures.say('shutoff.pressure', 'pressure', shutoff.pressure)} at shutoff and ${figures.say('curve.pressure', 'pressure', end.pressure)} at ${figures.say('curve.flow', 'flow', end.flow)}.`;
}

function fitLines(answer: CurveAnswer, figures: Figures): string[] {
  const { shutoff, repeatability, scatter, shapeChosen, shape, freedom, ratedSpeed } = answer;
  const say = (field: string, value: number) => figures.say(field, 'pressure', value);
  return [
    `At ${figures.say('rated_speed', 'speed', ratedSpeed)} the curve is ${SHAPE_WORDS[shape]}, ${shapeChosen === 'as_asked' ? 'as asked' : 'the best borne out'}; a reading scatters by ${say('scatter', scatter)} about it (${freedom} degrees of freedom).`,
    `Shutoff is ${say('shutoff.pressure', shutoff.pressure)} (${say('shutoff.low', shutoff.low)} to ${say('shutoff.high', shutoff.high)}), ${shutoff.basis === 'measured' ? 'measured' : 'EXTRAPOLATED, not measured'}.`,
    repeatability
      ? `Two readings of one flow differ by less than ${say('repeatability.limit', repeatability.limit)}, 95 times in 100 (${repeatability.flows} flows read more than once).`
      : 'No flow was read twice: how well a reading repeats is not known.',
  ];
}

function readingsTable({ readings }: CurveAnswer, figures: Figures): Block {
  const rows = [...readings]
    .sort((one, other) => one.flow - other.flow || one.line - other.line)
    .map((one): Cell[] => [
      `line ${one.line}`,
      figures.say('readings.flow', 'flow', one.flow),
      figures.say('readings.pressure', 'pressure', one.pressure),
      figures.say('readings.over', 'pressure', one.over, { signed: true }),
      one.odd ? { text: 'LEFT OUT', tone: 'care' } : '',
    ]);
  return {
    kind: 'table',
    columns: [
      { title: 'reading' },
      { title: 'flow', align: 'right' },
      { title: 'adds', align: 'right' },
      { title: 'over curve', align: 'right' },
      { title: '' },
    ],
    rows,
  };
}

function rowTable({ row, curve }: CurveAnswer, figures: Figures): Block {
  const half = (flow: number) => {
    const at = curve.reduce((near, one) =>
      Math.abs(one.flow - flow) < Math.abs(near.flow - flow) ? one : near,
    );
    return at.high - at.pressure;
  };
  return {
    kind: 'table',
    columns: [
      { title: 'curve at' },
      { title: 'adds', align: 'right' },
      { title: '90 % band', align: 'right' },
    ],
    rows: row.points.map(({ flow, pressure }) => [
      figures.say('row.flow', 'flow', flow),
      figures.say('row.pressure', 'pressure', pressure),
      `+/- ${figures.say('row.half', 'pressure', half(flow))}`,
    ]),
  };
}

function picture(answer: CurveAnswer, { units }: Figures): Block {
  const flow = (si: number) => toUnit(si, unitFor('flow', units));
  const pressure = (si: number) => toUnit(si, unitFor('pressure', units));
  const spots = (odd: boolean) =>
    answer.readings
      .filter((one) => one.odd === odd)
      .map((one) => ({
        x: flow(one.flow),
        y: pressure(one.pressure),
        ...(odd && { label: `line ${one.line}` }),
      }));
  const chart: Chart = {
    x: { title: 'flow at rated speed', unit: unitFor('flow', units), from: 0 },
    y: { title: 'pressure added', unit: unitFor('pressure', units), from: 0 },
    layers: [
      {
        kind: 'band',
        name: `${(answer.confidence * 100).toFixed(0)} % band`,
        points: answer.curve.map((at) => ({
          x: flow(at.flow),
          low: pressure(at.low),
          high: pressure(at.high),
        })),
      },
      {
        kind: 'line',
        name: 'fitted curve',
        points: answer.curve.map((at) => [flow(at.flow), pressure(at.pressure)]),
      },
      ...(answer.wear
        ? [
            {
              kind: 'line' as const,
              name: answer.wear.name,
              dash: 'dashed' as const,
              points: answer.wear.curve.map((at): [number, number] => [flow(at.flow), pressure(at.pressure)]),
            },
          ]
        : []),
      { kind: 'points', name: 'readings at rated speed', symbol: 'circle', points: spots(false) },
      ...(answer.odd
        ? [
            {
              kind: 'points' as const,
              name: 'reading left out',
              symbol: 'cross' as const,
              points: spots(true),
            },
          ]
        : []),
    ],
  };
  return {
    kind: 'chart',
    words: `${answer.title}: readings at rated speed over the fitted curve and its band.`,
    chart,
  };
}

const said = (statements: readonly Statement[], figures: Figures): string[] =>
  statements.map((one) => {
    const text = sentence(statementText(one, figures)).replace(/\.$/, '');
    return one.source ? `${text} [${one.source}].` : `${text}.`;
  });

/** What bench readings come to, for people. */
export function curveDocument(answer: CurveAnswer, units: UnitSystem, brief = false): Document {
  const figures = figuresIn(units);
  const { title, notes, assumptions } = answer;
  const first: Block = {
    kind: 'heading',
    level: 1,
    text: asSentence(verdictLine(answer, figures)),
    tone: answer.wear?.proven ? 'care' : undefined,
  };
  const noted: Block[] =
    notes.length > 0
      ? [heading('To mind'), { kind: 'list', items: said(notes, figures).map((line) => ({ lines: [line] })) }]
      : [];
  if (brief) return { title, blocks: [first, ...noted, paragraph(DEFERRAL)] };
  return {
    title,
    blocks: [
      first,
      paragraph(fitLines(answer, figures).join(' ')),
      picture(answer, figures),
      ...noted,
      heading('Readings as total head at rated speed'),
      readingsTable(answer, figures),
      heading('The curve for the layout'),
      rowTable(answer, figures),
      paragraph(`${said(assumptions, figures).join(' ')} ${DEFERRAL}`, 'quiet'),
    ],
  };
}
