import type { FlowAnswer } from '../../study/answer.js';
import type { LayoutCommand } from '../layout-command.js';

export const flow: LayoutCommand<FlowAnswer> = {
  name: 'flow',
  summary: 'with everything as it stands, what flows where and at what pressure?',
  examples: ['pumpyoke flow lay.yaml', 'pumpyoke flow - --units si < lay.yaml'],
  ask: async (layout) => (await import('../../study/operation.js')).operateLayout(layout),
  holds: () => true,
};
