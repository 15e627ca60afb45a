import type { TestOrifice } from '../../study/answer.js';
import { type Block, type Cell, heading, paragraph } from '../document.js';
import type { Figures } from '../figures.js';
import { of } from '../required.js';
import { statementText } from '../sentence.js';
import { sentence } from '../words.js';

type Grade = TestOrifice['grades'][number];

const gradeStart = ({ from }: Grade, { reading }: Read, figures: Figures): string =>
  figures.stated('test_orifice.grades.from', of('pressure', from), [reading]);

/** The grade's start that the reading is closest to: the one that rounding must not hide. */
const nearestGrade = ({ reading, grades }: Read): number | undefined =>
  grades.map(({ from }) => from).sort((a, b) => Math.abs(a - reading) - Math.abs(b - reading))[0];

function better({ reading, grades }: Read): Grade | undefined {
  const above = grades.filter(({ from }) => reading < from);
  return above.reduce<Grade | undefined>(
    (least, next) => (least && least.from <= next.from ? least : next),
    undefined,
  );
}

function gradeStep(orifice: Read, figures: Figures): string {
  const next = better(orifice);
  if (!next) return 'There is no higher grade.';
  const from = gradeStart(next, orifice, figures);
  const more = figures.say('test_orifice.grades.from', 'pressure', next.from - orifice.reading, { limit: 0 });
  return `The next grade, ${next.grade}, starts at ${from}: ${more} more.`;
}

function gradeRow(grade: Grade, orifice: Read, figures: Figures): Cell[] {
  const reached = orifice.reading >= grade.from;
  return [
    grade.grade,
    gradeStart(grade, orifice, figures),
    reached ? { text: 'reached', tone: 'good' } : 'not reached',
  ];
}

/** An orifice at which a reading can be told. */
type Read = TestOrifice & Required<Pick<TestOrifice, 'reading' | 'flow' | 'margin' | 'grade'>>;

const isRead = (orifice: TestOrifice): orifice is Read => orifice.reading !== undefined;

/** The inspector's reading in one line, to stand by the verdict: it may pass or fail on its own. */
export function orificeLine(orifice: TestOrifice | undefined, figures: Figures): Block[] {
  if (!orifice) return [];
  if (!isRead(orifice)) {
    const why = orifice.refusal ? `: ${statementText(orifice.refusal, figures)}` : '';
    return [paragraph(sentence(`At the agency's test orifice no reading can be told${why}`), 'bad')];
  }
  const reading = figures.say('test_orifice.reading', 'pressure', orifice.reading, {
    limit: nearestGrade(orifice),
  });
  const margin = figures.overOrShort('test_orifice.margin', 'pressure', orifice.margin);
  const text = `At the agency's test orifice the gauge should read ${reading}: ${orifice.grade}, ${margin}.`;
  return [paragraph(text, orifice.margin < 0 ? 'bad' : undefined)];
}

/** What the inspector will read, which is the one number that decides on the day. */
export function testOrificeSection(orifice: TestOrifice | undefined, figures: Figures): Block[] {
  if (!orifice || !isRead(orifice)) return [];
  const bore = figures.say('test_orifice.bore', 'length', orifice.bore, { role: 'bore' });
  const reading = figures.say('test_orifice.reading', 'pressure', orifice.reading, {
    limit: nearestGrade(orifice),
  });
  const flow = figures.say('test_orifice.flow', 'flow', orifice.flow);
  const margin = figures.overOrShort('test_orifice.margin', 'pressure', orifice.margin);
  return [
    heading("The agency's test orifice"),
    paragraph(
      `With the ${bore} orifice (discharge coefficient ${Number(orifice.dischargeCoefficient.toFixed(4))}) the gauge upstream of it ` +
        `should read ${reading} while ${flow} flows: ${orifice.grade}, ${margin}. ${gradeStep(orifice, figures)}`,
    ),
    {
      kind: 'table',
      columns: [{ title: 'Grade' }, { title: 'From', align: 'right' }, { title: 'Predicted' }],
      rows: orifice.grades.map((grade) => gradeRow(grade, orifice, figures)),
    },
    paragraph(`Source: ${sentence(orifice.source)}`, 'quiet'),
  ];
}
