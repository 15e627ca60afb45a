import type { FlowAnswer } from '../../study/answer.js';
import {
  addThrottleOption,
  addValveOptions,
  atThrottle,
  nozzleStateOf,
  type ValvesGiven,
} from '../field-options.js';
import type { LayoutCommand } from '../layout-command.js';

interface Given extends ValvesGiven {
  throttle?: string;
  allCases?: boolean;
}

export const flow: LayoutCommand<FlowAnswer, Given> = {
  name: 'flow',
  summary: 'with everything as it stands, what flows where and at what pressure?',
  examples: [
    'pumpyoke flow lay.yaml',
    'pumpyoke flow lay.yaml --shut all --open "lateral 7,lateral 8"',
    'pumpyoke flow lay.yaml --throttle "80 %" --all-cases',
    'pumpyoke flow lay.yaml --format card --out card.txt',
    'pumpyoke flow - --units si < lay.yaml',
  ],
  options: (command) =>
    addThrottleOption(addValveOptions(command)).option(
      '--all-cases',
      'every case that is run beside the question, not only those that break a limit',
    ),
  ask: async (layout, given) => {
    const nozzleState = await nozzleStateOf(layout, given);
    const { operateLayout } = await import('../../study/operation.js');
    const { allCases } = given;
    return operateLayout(await atThrottle(layout, given.throttle), { nozzleState, allCases });
  },
  card: async (layout, given) => {
    const nozzleState = await nozzleStateOf(layout, given);
    const { cardOf } = await import('../../study/card.js');
    return cardOf(await atThrottle(layout, given.throttle), { nozzleState });
  },
  holds: ({ impossible }) => impossible.length === 0,
};
