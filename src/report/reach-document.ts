import type { UnitSystem } from '../quantity/format.js';
import type { ReachAnswer } from '../study/answer.js';
import { type Document, paragraph } from './document.js';
import { figuresIn } from './figures.js';
import { briefStops, cautionsSection } from './sections/cautions.js';
import { foundationsSection } from './sections/foundations.js';
import { reachHeadline, reachTables, reachTermsSection } from './sections/reach.js';
import { subjectSection } from './sections/subject.js';
import { DEFERRAL } from './words.js';

/** The whole report of a reach; `brief` keeps the headline, what must not be run, and who decides. */
export function reachDocument(answer: ReachAnswer, units: UnitSystem, brief = false): Document {
  const figures = figuresIn(units);
  const { title } = answer;
  const first = reachHeadline(answer, figures);
  if (brief) {
    return { title, blocks: [...first, ...briefStops(answer.cautions, figures), paragraph(DEFERRAL)] };
  }
  return {
    title,
    blocks: [
      ...first,
      ...subjectSection(answer, figures),
      ...reachTermsSection(answer, figures),
      ...reachTables(answer, figures),
      ...cautionsSection(answer.cautions, figures),
      ...foundationsSection(answer.assumptions, answer.solver, figures),
    ],
  };
}
