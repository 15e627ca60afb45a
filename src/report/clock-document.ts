import type { UnitSystem } from '../quantity/format.js';
import type { ClockAnswer } from '../study/answer.js';
import { type Document, paragraph } from './document.js';
import { figuresIn } from './figures.js';
import { briefStops, cautionsSection } from './sections/cautions.js';
import { clockHeadline, fuelSection, shuttleSection, tankClockSection } from './sections/clock.js';
import { foundationsSection } from './sections/foundations.js';
import { subjectSection } from './sections/subject.js';
import { DEFERRAL } from './words.js';

/** The whole report of a clock; `brief` keeps the headline, what must not be run, and who decides. */
export function clockDocument(answer: ClockAnswer, units: UnitSystem, brief = false): Document {
  const figures = figuresIn(units);
  const { title } = answer;
  const first = clockHeadline(answer, figures);
  if (brief) {
    return { title, blocks: [...first, ...briefStops(answer.cautions, figures), paragraph(DEFERRAL)] };
  }
  return {
    title,
    blocks: [
      ...first,
      ...subjectSection(answer, figures),
      ...tankClockSection(answer, figures),
      ...shuttleSection(answer, figures),
      ...fuelSection(answer, figures),
      ...cautionsSection(answer.cautions, figures),
      ...foundationsSection(answer.assumptions, answer.solver, figures),
    ],
  };
}
