import type { UnitSystem } from '../quantity/format.js';
import type { RequireAnswer } from '../study/answer.js';
import { type Document, paragraph } from './document.js';
import { figuresIn } from './figures.js';
import { briefStops, cautionsSection } from './sections/cautions.js';
import {
  handRulesSection,
  needsSection,
  requireHeadline,
  searchedSection,
  servableSection,
} from './sections/demand.js';
import { foundationsSection } from './sections/foundations.js';
import { habitSection } from './sections/habit.js';
import { subjectSection } from './sections/subject.js';
import { DEFERRAL } from './words.js';

/** The whole report of what is required; `brief` keeps the headline, what must not be run, and who decides. */
export function requireDocument(answer: RequireAnswer, units: UnitSystem, brief = false): Document {
  const figures = figuresIn(units);
  const { title } = answer;
  const first = requireHeadline(answer, figures);
  if (brief) {
    return { title, blocks: [...first, ...briefStops(answer.cautions, figures), paragraph(DEFERRAL)] };
  }
  return {
    title,
    blocks: [
      ...first,
      ...subjectSection(answer, figures),
      ...servableSection(answer, figures),
      ...searchedSection(answer, figures),
      ...handRulesSection(answer, figures),
      ...habitSection(answer.habits, figures),
      ...cautionsSection(answer.cautions, figures),
      ...needsSection(answer, figures),
      ...foundationsSection(answer.assumptions, answer.solver, figures),
    ],
  };
}
