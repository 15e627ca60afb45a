import type { CheckAnswer } from '../../study/answer.js';
import type { LayoutCommand } from '../layout-command.js';

const collected = (text: string, before: string[] = []): string[] => [...before, text];

interface CheckGiven {
  across?: string[];
  ledger?: boolean;
}

export const check: LayoutCommand<CheckAnswer, CheckGiven> = {
  name: 'check',
  summary: 'does this layout reach the pressure at flow that its typing asks for?',
  examples: [
    'pumpyoke check engine-614.yaml',
    'pumpyoke check engine-614.yaml --across "0 ft, 5000 ft"',
    'pumpyoke check engine-614.yaml --across "wear 0 %, 5 %"',
    'pumpyoke check e614.yaml --across "0 m, 2000 m; wear 5 %"',
    'pumpyoke check engine-614.yaml --ledger',
    'pumpyoke check e614.yaml --units si --out report.html',
    'pumpyoke check engine-614.yaml --json',
  ],
  options: (command) =>
    command
      .option(
        '--across <list>',
        'the verdict at each of several places ("0 ft, 5000 ft"), temperatures of the air ("70 degF, 100 degF") or, with a word before them, of the "water", "wear" or levels of the "tank"; lists set off by semicolons are crossed; may be given again',
        collected,
      )
      .option('--ledger', 'every limit with its load and margin, and not only the three tightest'),
  ask: async (layout, { across, ledger }) => {
    const { readSweeps } = await import('../sweep.js');
    return (await import('../../study/rating.js')).checkLayout(layout, {
      across: across?.flatMap(readSweeps),
      ledger: ledger ? 'all' : 'tightest',
    });
  },
  holds: (answer) => answer.verdict === 'meets',
};
