import type { FlowAnswer } from '../study/answer.js';
import type { Block } from './document.js';
import type { Figures } from './figures.js';
import { reportWith } from './report-document.js';
import { casesSection } from './sections/cases.js';
import { cautionsSection } from './sections/cautions.js';
import {
  flowHeadline,
  hoseLimitSection,
  linesSection,
  nozzlesSection,
  tankSection,
} from './sections/flows.js';
import { groundSection } from './sections/ground.js';
import { habitSection } from './sections/habit.js';
import { heatSection } from './sections/heat.js';
import { pointsSection } from './sections/points.js';
import { lineControlSection } from './sections/pressure-control.js';
import { pumpsSection } from './sections/pumps.js';
import { portableTanksSection, supplySection } from './sections/supply.js';

/** The whole report of a flow. */
export const flowDocument = reportWith<FlowAnswer>(flowHeadline, (answer, figures) =>
  answer.impossible.length > 0 ? withheld(answer, figures) : told(answer, figures),
);

/** Of a state that cannot be: what it cannot be for, and what comes of it otherwise. */
const withheld = (answer: FlowAnswer, figures: Figures): Block[] => [
  ...cautionsSection(answer.cautions, figures),
  ...casesSection(answer.cases, figures),
];

const told = (answer: FlowAnswer, figures: Figures): Block[] => [
  ...nozzlesSection(answer, figures),
  ...habitSection(answer.habits, figures),
  ...pumpsSection(answer, figures),
  ...heatSection(answer.heat, figures),
  ...cautionsSection(answer.cautions, figures),
  ...lineControlSection(answer, figures),
  ...casesSection(answer.cases, figures),
  ...groundSection(answer, figures),
  ...linesSection(answer, figures),
  ...pointsSection(answer, figures),
  ...supplySection(answer, figures),
  ...portableTanksSection(answer.portableTanks, figures),
  ...tankSection(answer.tank, figures),
  ...hoseLimitSection(answer.hoseWithoutLimit),
];
