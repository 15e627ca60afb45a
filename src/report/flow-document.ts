import type { UnitSystem } from '../quantity/format.js';
import type { FlowAnswer } from '../study/answer.js';
import { type Document, paragraph } from './document.js';
import { figuresIn } from './figures.js';
import { casesSection } from './sections/cases.js';
import { briefStops, cautionsSection } from './sections/cautions.js';
import { flowHeadline, linesSection, nozzlesSection, tankSection } from './sections/flows.js';
import { foundationsSection } from './sections/foundations.js';
import { groundSection } from './sections/ground.js';
import { habitSection } from './sections/habit.js';
import { heatSection } from './sections/heat.js';
import { pointsSection } from './sections/points.js';
import { lineControlSection } from './sections/pressure-control.js';
import { pumpsSection } from './sections/pumps.js';
import { subjectSection } from './sections/subject.js';
import { portableTanksSection, supplySection } from './sections/supply.js';
import { DEFERRAL } from './words.js';

/** The whole report of a flow; `brief` keeps the headline, what must not be run, and who decides. */
export function flowDocument(answer: FlowAnswer, units: UnitSystem, brief = false): Document {
  const figures = figuresIn(units);
  const { title } = answer;
  const first = flowHeadline(answer, figures);
  if (brief) {
    return { title, blocks: [...first, ...briefStops(answer.cautions, figures), paragraph(DEFERRAL)] };
  }
  return {
    title,
    blocks: [
      ...first,
      ...subjectSection(answer, figures),
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
      ...foundationsSection(answer.assumptions, answer.solver, figures),
    ],
  };
}
