import { EXIT, type ExitStatus } from '../exit-status.js';
import { fail } from '../failure.js';
import type { Terminal } from '../terminal.js';
import type { GivenDrillOptions } from './drill-options.js';

export type DrillTask = 'sheet' | 'topics' | 'ask' | { mark: string[]; unitsSaid: boolean };

async function done(task: DrillTask, given: GivenDrillOptions, terminal: Terminal): Promise<ExitStatus> {
  if (typeof task === 'object') {
    const { markFiles } = await import('./drill-mark.js');
    return markFiles(task.mark, given, task.unitsSaid, terminal);
  }
  if (task === 'ask') {
    const { ask } = await import('./drill-ask.js');
    return ask(given, terminal);
  }
  const { printSheet, printTopics } = await import('./drill-sheet.js');
  await (task === 'topics' ? printTopics : printSheet)(given, terminal);
  return EXIT.yes;
}

/**
 * All that `drill` does. It ships as a file of its own with its own copy of what it uses, so what it throws is no instance
 * of the program's classes: it has to become words and a status in here.
 */
export async function runDrill(
  task: DrillTask,
  given: GivenDrillOptions,
  terminal: Terminal,
): Promise<ExitStatus> {
  try {
    return await done(task, given, terminal);
  } catch (error) {
    return fail(error, terminal);
  }
}
