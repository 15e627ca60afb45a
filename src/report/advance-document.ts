import type { UnitSystem } from '../quantity/format.js';
import type { AdvanceAnswer } from '../study/answer.js';
import { type Document, paragraph } from './document.js';
import { figuresIn } from './figures.js';
import {
  advanceHeadline,
  optionsSection,
  planSection,
  stepsSection,
  storesSection,
} from './sections/advance.js';
import { briefStops, cautionsSection } from './sections/cautions.js';
import { foundationsSection } from './sections/foundations.js';
import { subjectSection } from './sections/subject.js';
import { DEFERRAL } from './words.js';

/** The whole report of an advance; `brief` keeps the headline, what must not be run, and who decides. */
export function advanceDocument(answer: AdvanceAnswer, units: UnitSystem, brief = false): Document {
  const figures = figuresIn(units);
  const { title } = answer;
  const first = advanceHeadline(answer, figures);
  if (brief) {
    return { title, blocks: [...first, ...briefStops(answer.cautions, figures), paragraph(DEFERRAL)] };
  }
  return {
    title,
    blocks: [
      ...first,
      ...subjectSection(answer, figures),
      ...planSection(answer, figures),
      ...stepsSection(answer, figures),
      ...optionsSection(answer, figures),
      ...storesSection(answer, figures),
      ...cautionsSection(answer.cautions, figures),
      ...foundationsSection(answer.assumptions, answer.solver, figures),
    ],
  };
}
