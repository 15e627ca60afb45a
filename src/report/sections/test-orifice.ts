import type { TestOrifice } from '../../study/answer.js';
import { type Block, type Cell, heading, paragraph } from '../document.js';
import type { Figures } from '../figures.js';

function better({ reading, grades }: TestOrifice): { grade: string; from: number } | undefined {
  const above = grades.filter(({ from }) => reading < from);
  return above.reduce<{ grade: string; from: number } | undefined>(
    (least, next) => (least && least.from <= next.from ? least : next),
    undefined,
  );
}

function gradeStep(orifice: TestOrifice, figures: Figures): string {
  const next = better(orifice);
  if (!next) return 'There is no higher grade.';
  const from = figures.say('test_orifice.grades.from', 'pressure', next.from, { limit: orifice.reading });
  const more = figures.say('test_orifice.grades.from', 'pressure', next.from - orifice.reading, { limit: 0 });
  return `The next grade, ${next.grade}, starts at ${from}: ${more} more.`;
}

function gradeRow(grade: { grade: string; from: number }, orifice: TestOrifice, figures: Figures): Cell[] {
  const reached = orifice.reading >= grade.from;
  return [
    grade.grade,
    figures.say('test_orifice.grades.from', 'pressure', grade.from, { limit: orifice.reading }),
    reached ? { text: 'reached', tone: 'good' } : 'not reached',
  ];
}

/** What the inspector will read, which is the one number that decides on the day. */
export function testOrificeSection(orifice: TestOrifice | undefined, figures: Figures): Block[] {
  if (!orifice) return [];
  const bore = figures.say('test_orifice.bore', 'length', orifice.bore, { role: 'bore' });
  const pass = orifice.grades.length > 0 ? Math.min(...orifice.grades.map(({ from }) => from)) : undefined;
  const reading = figures.say('test_orifice.reading', 'pressure', orifice.reading, { limit: pass });
  const flow = figures.say('test_orifice.flow', 'flow', orifice.flow);
  const margin = figures.overOrShort('test_orifice.margin', 'pressure', orifice.margin);
  return [
    heading("The agency's test orifice"),
    paragraph(
      `With the ${bore} orifice (discharge coefficient ${orifice.dischargeCoefficient}) the gauge upstream of it ` +
        `should read ${reading} while ${flow} flows: ${orifice.grade}, ${margin}. ${gradeStep(orifice, figures)}`,
    ),
    {
      kind: 'table',
      columns: [{ title: 'Grade' }, { title: 'From', align: 'right' }, { title: 'Predicted' }],
      rows: orifice.grades.map((grade) => gradeRow(grade, orifice, figures)),
    },
    paragraph(`Source: ${orifice.source}.`, 'quiet'),
  ];
}
