import type { Command } from 'commander';
import type { Layout } from '../layout/layout.js';
import type { Answer } from '../study/answer.js';
import type { CardAnswer } from '../study/card.js';
import { EXIT, type ExitStatus } from './exit-status.js';
import { type GivenOptions, reportOptions } from './options.js';
import { report, reportCard } from './output.js';
import type { Session } from './session.js';

/** A command that asks one question of one layout; the study behind it is loaded when it is asked. */
export interface LayoutCommand<A extends Answer, O = object> {
  name: string;
  summary: string;
  examples: string[];
  /** Options of its own, beside those that every command has. */
  options?(command: Command): Command;
  ask(layout: Layout, options: O): Promise<A>;
  /** The one-page card of the lay, where the question has one. */
  card?(layout: Layout, options: O, answer: A): Promise<CardAnswer>;
  /** Whether the answer is yes; a question that is no yes-or-no question always holds. */
  holds(answer: A): boolean;
}

function statusOf<A extends Answer, O>(command: LayoutCommand<A, O>, answer: A): ExitStatus {
  const stopped = answer.cautions.some((caution) => caution.level === 'stop');
  return command.holds(answer) && !stopped ? EXIT.yes : EXIT.no;
}

export const examplesText = (examples: string[]): string =>
  `Examples:\n${examples.map((example) => `  ${example}`).join('\n')}\n`;

export function addLayoutCommand<A extends Answer, O>(
  program: Command,
  session: Session,
  command: LayoutCommand<A, O>,
): void {
  const own = program
    .command(command.name)
    .summary(command.summary)
    .description(command.summary)
    .argument('<layout>', 'the layout file, or - for standard input')
    .addHelpText('before', examplesText(command.examples));
  (command.options?.(own) ?? own).action(async (path: string, _: unknown, self: Command) => {
    const options = reportOptions(self.optsWithGlobals<GivenOptions>());
    await import('./plain-schemas.js');
    const { readLayout } = await import('../layout/read-layout.js');
    const { layout } = readLayout(path);
    if (options.out !== undefined) {
      const { checkOutputs } = await import('./output-files.js');
      checkOutputs([['--out', options.out]], layout.files);
    }
    const given = self.opts<O & object>();
    const answer = await command.ask(layout, given);
    if (options.format === 'card' && command.card)
      await reportCard(await command.card(layout, given, answer), options);
    else await report(answer, options, session.terminal);
    session.status = statusOf(command, answer);
  });
}
