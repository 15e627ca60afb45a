import type { ClockAnswer } from '../../study/answer.js';
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
}

export const clock: LayoutCommand<ClockAnswer, Given> = {
  name: 'clock',
  summary: 'how long do water and fuel last, and what do the tenders sustain?',
  examples: [
    'pumpyoke clock lay.yaml',
    'pumpyoke clock lay.yaml --shut "lateral 1,lateral 2"',
    'pumpyoke clock lay.yaml --json',
  ],
  options: (command) => addThrottleOption(addValveOptions(command)),
  ask: async (layout, given) => {
    const nozzleState = await nozzleStateOf(layout, given);
    const { clockOf } = await import('../../study/clock.js');
    return clockOf(await atThrottle(layout, given.throttle), { nozzleState });
  },
  holds: ({ shuttle, impossible }) => impossible.length === 0 && shuttle?.gap === undefined,
};
