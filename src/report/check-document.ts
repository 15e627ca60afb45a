import type { CheckAnswer } from '../study/answer.js';
import { type Block, paragraph } from './document.js';
import { reportWith } from './report-document.js';
import { toldFlow } from './required.js';
import { axlesSection, pairCostSection } from './sections/axles.js';
import { cautionsSection } from './sections/cautions.js';
import { conditionsSection } from './sections/conditions.js';
import { heatSection } from './sections/heat.js';
import { inventorySection } from './sections/inventory.js';
import { ledgerSection } from './sections/ledger.js';
import { lifeSection } from './sections/life.js';
import { lossesSection } from './sections/losses.js';
import { pointsSection } from './sections/points.js';
import { pressureControlSection } from './sections/pressure-control.js';
import { pumpsSection } from './sections/pumps.js';
import { pumpsOutSection } from './sections/pumps-out.js';
import { stagingAdviceSection } from './sections/staging-advice.js';
import { stagingsSection } from './sections/stagings.js';
import { requirementSection } from './sections/subject.js';
import { suctionSection } from './sections/suction.js';
import { testOrificeSection } from './sections/test-orifice.js';
import { verdictSection } from './sections/verdict.js';

/** The whole report of a check. */
export const checkDocument = reportWith<CheckAnswer>(verdictSection, (answer, figures) => [
  ...requirementSection(answer, figures),
  ...stagingsSection(answer, figures),
  ...conditionsSection(answer, figures),
  ...pumpsSection(answer, figures, `The pumps at ${toldFlow(answer, figures)}`),
  ...stagingAdviceSection(answer, figures),
  ...heatSection(answer.heat, figures),
  ...suctionSection(answer, figures),
  ...pressureControlSection(answer, figures),
  ...ledgerSection(answer.ledger, figures),
  ...lossesSection(answer, figures),
  ...cautionsSection(answer.cautions, figures),
  ...testOrificeSection(answer.testOrifice, figures),
  ...pumpsOutSection(answer, figures),
  ...(answer.life ? lifeSection(answer.life, figures) : []),
  ...inventorySection(answer.inventory, figures),
  ...axlesSection(answer.axles, figures),
  ...pairCostSection(answer.pairCost, figures),
  ...pointsSection(answer, figures),
  ...leftOutParagraph(answer),
]);

/** What has no steady state, so that nobody takes silence about it for a clean bill. */
function leftOutParagraph({ leftOut }: CheckAnswer): Block[] {
  if (leftOut.length === 0) return [];
  return [
    paragraph(
      `No steady state was found for ${leftOut.join(', ')}: nothing is told of it, and no caution covers it.`,
    ),
  ];
}
