import { sentence } from '../../report/words.js';
import type { RequireAnswer } from '../../study/answer.js';
import { addValveOptions, nozzleStateOf, type ValvesGiven } from '../field-options.js';
import type { LayoutCommand } from '../layout-command.js';
import { UsageFault } from '../usage-fault.js';

export const require: LayoutCommand<RequireAnswer, ValvesGiven> = {
  name: 'require',
  summary: 'to give every open nozzle its pressure, what must each pump discharge, and can it?',
  examples: [
    'pumpyoke require lay.yaml',
    'pumpyoke require lay.yaml --shut "lateral 1,lateral 2"',
    'pumpyoke require lay.yaml --json',
  ],
  options: addValveOptions,
  ask: async (layout, given) => {
    const nozzleState = await nozzleStateOf(layout, given);
    const { NothingRequired, requireOf } = await import('../../study/require.js');
    try {
      return await requireOf(layout, { nozzleState });
    } catch (error) {
      if (error instanceof NothingRequired) throw new UsageFault(sentence(error.message));
      throw error;
    }
  },
  holds: (answer) => answer.verdict === 'meets',
};
