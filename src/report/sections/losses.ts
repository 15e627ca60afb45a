import type { CheckAnswer, Loss } from '../../study/answer.js';
import { type Block, heading, paragraph } from '../document.js';
import type { Figures } from '../figures.js';
import { toldFlow } from '../required.js';
import { STAGING_PHRASES } from '../words.js';

const MOST_ROWS = 12;

function row(loss: Loss, figures: Figures): string[] {
  return [
    loss.where,
    loss.kind,
    figures.say('losses.flow', 'flow', loss.flow),
    figures.say('losses.loss', 'pressure', loss.loss),
  ];
}

/** Largest first, so that the eye finds what to change; the small end is counted and bounded, never hidden. */
export function lossesSection(answer: CheckAnswer, figures: Figures): Block[] {
  const { losses, staging } = answer;
  if (losses.length === 0) return [];
  const shown = losses.length <= MOST_ROWS + 1 ? losses : losses.slice(0, MOST_ROWS);
  const rest = losses.slice(shown.length);
  const flow = toldFlow(answer, figures);
  const blocks: Block[] = [
    heading(`Where the pressure goes at ${flow}, ${STAGING_PHRASES[staging]}`),
    {
      kind: 'table',
      columns: [
        { title: 'Where' },
        { title: 'What' },
        { title: 'Flow', align: 'right' },
        { title: 'Loss', align: 'right' },
      ],
      rows: shown.map((loss) => row(loss, figures)),
    },
  ];
  if (losses.some((loss) => loss.loss < 0)) {
    blocks.push(paragraph('A loss below zero is a gain: water running downhill.', 'quiet'));
  }
  if (rest.length > 0) {
    const most = figures.say('losses.loss', 'pressure', Math.max(...rest.map((loss) => loss.loss)));
    blocks.push(paragraph(`${rest.length} more, none over ${most}.`));
  }
  return blocks;
}
