import type { RequireAnswer } from '../study/answer.js';
import { reportWith } from './report-document.js';
import { cautionsSection } from './sections/cautions.js';
import {
  handRulesSection,
  needsSection,
  requireHeadline,
  searchedSection,
  servableSection,
} from './sections/demand.js';
import { habitSection } from './sections/habit.js';

/** The whole report of what is required. */
export const requireDocument = reportWith<RequireAnswer>(requireHeadline, (answer, figures) => [
  ...servableSection(answer, figures),
  ...searchedSection(answer, figures),
  ...handRulesSection(answer, figures),
  ...habitSection(answer.habits, figures),
  ...cautionsSection(answer.cautions, figures),
  ...needsSection(answer, figures),
]);
