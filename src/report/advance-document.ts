import type { AdvanceAnswer } from '../study/answer.js';
import { reportWith } from './report-document.js';
import {
  advanceHeadline,
  optionsSection,
  planSection,
  stepsSection,
  storesSection,
} from './sections/advance.js';
import { cautionsSection } from './sections/cautions.js';

/** The whole report of an advance. */
export const advanceDocument = reportWith<AdvanceAnswer>(advanceHeadline, (answer, figures) => [
  ...planSection(answer, figures),
  ...stepsSection(answer, figures),
  ...optionsSection(answer, figures),
  ...storesSection(answer, figures),
  ...cautionsSection(answer.cautions, figures),
]);
