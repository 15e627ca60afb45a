import type { CheckAnswer } from '../../study/answer.js';
import type { LayoutCommand } from '../layout-command.js';

export const check: LayoutCommand<CheckAnswer> = {
  name: 'check',
  summary: 'does this layout reach the pressure at flow that its typing asks for?',
  examples: [
    'pumpyoke check truck.yaml',
    'pumpyoke check truck.yaml --units si --out report.html',
    'pumpyoke check truck.yaml --json',
  ],
  ask: async (layout) => (await import('../../study/rating.js')).checkLayout(layout),
  holds: (answer) => answer.verdict === 'meets',
};
