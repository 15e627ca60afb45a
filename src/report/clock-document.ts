import type { ClockAnswer } from '../study/answer.js';
import { reportWith } from './report-document.js';
import { cautionsSection } from './sections/cautions.js';
import { clockHeadline, fuelSection, shuttleSection, tankClockSection } from './sections/clock.js';

/** The whole report of a clock. */
export const clockDocument = reportWith<ClockAnswer>(clockHeadline, (answer, figures) => [
  ...(answer.impossible.length > 0
    ? []
    : [
        ...tankClockSection(answer, figures),
        ...shuttleSection(answer, figures),
        ...fuelSection(answer, figures),
      ]),
  ...cautionsSection(answer.cautions, figures),
]);
