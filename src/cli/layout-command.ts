import type { Command, Option } from 'commander';
import type { Layout } from '../layout/layout.js';
import type { Answer } from '../study/answer.js';
import { EXIT, type ExitStatus } from './exit-status.js';
import { type GivenOptions, reportOptions } from './options.js';
import { report } from './output.js';
import type { Session } from './session.js';

/** A command that asks one question of one layout; the study behind it is loaded when it is asked. */
export interface LayoutCommand<A extends Answer> {
  name: string;
  summary: string;
  examples: string[];
  ask(layout: Layout, given: Record<string, unknown>): Promise<A>;
  /** Options of its own; what they hold is handed to `ask`. */
  options?: () => Option[];
  /** Whether the answer is yes; a question that is no yes-or-no question always holds. */
  holds(answer: A): boolean;
}

function statusOf<A extends Answer>(command: LayoutCommand<A>, answer: A): ExitStatus {
  const stopped = answer.cautions.some((caution) => caution.level === 'stop');
  return command.holds(answer) && !stopped ? EXIT.yes : EXIT.no;
}

export const examplesText = (examples: string[]): string =>
  `Examples:\n${examples.map((example) => `  ${example}`).join('\n')}\n`;

export function addLayoutCommand<A extends Answer>(
  program: Command,
  session: Session,
  command: LayoutCommand<A>,
): void {
  const own = program
    .command(command.name)
    .summary(command.summary)
    .description(command.summary)
    .argument('<layout>', 'the layout file, or - for standard input')
    .addHelpText('before', examplesText(command.examples))
    .action(async (path: string, _: unknown, self: Command) => {
      const options = reportOptions(self.optsWithGlobals<GivenOptions>());
      await import('./plain-schemas.js');
      const { readLayout } = await import('../layout/read-layout.js');
      const { layout } = readLayout(path);
      const answer = await command.ask(layout, self.opts());
      await report(answer, options, session.terminal);
      session.status = statusOf(command, answer);
    });
  for (const option of command.options?.() ?? []) own.addOption(option);
}
