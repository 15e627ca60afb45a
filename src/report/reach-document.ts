import type { ReachAnswer } from '../study/answer.js';
import { reportWith } from './report-document.js';
import { cautionsSection } from './sections/cautions.js';
import { reachHeadline, reachTables, reachTermsSection } from './sections/reach.js';

/** The whole report of a reach. */
export const reachDocument = reportWith<ReachAnswer>(reachHeadline, (answer, figures) => [
  ...reachTermsSection(answer, figures),
  ...reachTables(answer, figures),
  ...cautionsSection(answer.cautions, figures),
]);
