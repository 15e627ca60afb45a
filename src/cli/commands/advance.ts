import { sentence } from '../../report/words.js';
import type { AdvanceAnswer } from '../../study/answer.js';
import { addThrottleOption, atThrottle } from '../field-options.js';
import type { LayoutCommand } from '../layout-command.js';
import { UsageFault } from '../usage-fault.js';

interface Given {
  throttle?: string;
}

export const advance: LayoutCommand<AdvanceAnswer, Given> = {
  name: 'advance',
  summary: 'the lay grows a section at a time: how far, what stops it, and what would take it further?',
  examples: [
    'pumpyoke advance spur.yaml',
    'pumpyoke advance spur.yaml --throttle "80 %"',
    'pumpyoke advance spur.yaml --format card --out card.txt',
  ],
  options: addThrottleOption,
  ask: async (layout, given) => {
    const { advanceLayout, NoProgressiveLay } = await import('../../study/progression.js');
    try {
      return await advanceLayout(await atThrottle(layout, given.throttle));
    } catch (error) {
      if (error instanceof NoProgressiveLay) throw new UsageFault(sentence(error.message));
      throw error;
    }
  },
  card: async (layout, given, answer) => {
    const { advanceCard } = await import('../../study/card.js');
    return advanceCard(await atThrottle(layout, given.throttle), answer);
  },
  holds: (answer) => answer.stop === undefined,
};
