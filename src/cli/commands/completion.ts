import type { Command } from 'commander';
import { examplesText } from '../layout-command.js';
import { type GivenOptions, reportOptions } from '../options.js';
import { put } from '../output.js';
import type { Session } from '../session.js';
import { UsageFault } from '../usage-fault.js';
import { STARTS } from './new.js';
import { SCHEMA_NAMES } from './schema.js';

const EXAMPLES = [
  'pumpyoke completion bash > ~/.local/share/bash-completion/completions/pumpyoke',
  'pumpyoke completion zsh > ~/.zfunc/_pumpyoke   # a folder of your fpath',
  'pumpyoke completion fish > ~/.config/fish/completions/pumpyoke.fish',
];

export const SHELLS = ['bash', 'zsh', 'fish'] as const;

/** `pumpyoke completion`: a script by which a shell completes commands, options and their words. */
export function addCompletionCommand(program: Command, _: Session): void {
  const summary = 'a script that completes commands and options in your shell';
  program
    .command('completion')
    .summary(summary)
    .description(summary)
    .argument('<shell>', SHELLS.join(', '))
    .addHelpText('before', examplesText(EXAMPLES))
    .action(async (word: string, _options: unknown, self: Command) => {
      const { out, quiet } = reportOptions(self.optsWithGlobals<GivenOptions>());
      const shell = SHELLS.find((one) => one === word);
      if (shell === undefined)
        throw new UsageFault(`no completion for ${word}: ${SHELLS.join(', ')} are known`);
      await import('../plain-schemas.js');
      const { KINDS } = await import('../../catalogue/kind.js');
      const { completable } = await import('../completion/completable.js');
      const words = {
        catalogue: KINDS,
        new: Object.keys(STARTS),
        schema: SCHEMA_NAMES,
        completion: SHELLS,
      };
      const commands = completable(program, words);
      const { scriptFor } = await import('../completion/scripts.js');
      put(scriptFor(shell, commands), out, quiet);
    });
}
