import type { UnitSystem } from '../quantity/format.js';
import type { Answer } from '../study/answer.js';
import { type Block, type Document, paragraph } from './document.js';
import { type Figures, figuresIn } from './figures.js';
import { briefStops } from './sections/cautions.js';
import { foundationsSection } from './sections/foundations.js';
import { subjectSection } from './sections/subject.js';
import { DEFERRAL } from './words.js';

type Sections<A> = (answer: A, figures: Figures) => Block[];

/**
 * The report of a question: its answer in a line, what it was asked of, its sections, and what it all rests on. `brief`
 * keeps the answer, what must not be run, and who decides.
 */
export function reportWith<A extends Answer>(answerLine: Sections<A>, sections: Sections<A>) {
  return (answer: A, units: UnitSystem, brief = false): Document => {
    const figures = figuresIn(units);
    const { title } = answer;
    const first = answerLine(answer, figures);
    if (brief)
      return { title, blocks: [...first, ...briefStops(answer.cautions, figures), paragraph(DEFERRAL)] };
    return {
      title,
      blocks: [
        ...first,
        ...subjectSection(answer, figures),
        ...sections(answer, figures),
        ...foundationsSection(answer.assumptions, answer.solver, figures),
      ],
    };
  };
}
