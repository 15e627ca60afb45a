import { Command } from 'commander';
import { paintFor } from '../report/paint.js';
import { check } from './commands/check.js';
import { flow } from './commands/flow.js';
import { reach } from './commands/reach.js';
import { require } from './commands/require.js';
import { addLayoutCommand, examplesText } from './layout-command.js';
import { addCommonOptions } from './options.js';
import type { Session } from './session.js';
import { VERSION } from './version.js';

const SUMMARY =
  'Hydraulics for fire engines that carry two pumps plumbed together: a YAML layout goes in, a verdict comes out.';

const EXAMPLES = [
  'pumpyoke check engine-614.yaml       does it make its typing?',
  'pumpyoke flow two-lines.yaml         what flows where?',
  'pumpyoke require two-lines.yaml      what must the pumps do for it?',
  'pumpyoke reach two-lines.yaml        how far and how high does it go?',
  'pumpyoke check engine-614.yaml --out report.html',
];

const STATUSES = `
Exit status:
  0   answered, and the answer is yes
  1   answered, and the answer is no: it falls short, or a caution says stop
  2   the layout or the command line is wrong
  3   the network has no steady answer
  70  a fault of the program's own
`;

export function programFor(session: Session): Command {
  const { out, err } = session.terminal;
  const title = (text: string) => paintFor(out.colour).strong(text);
  const program = new Command('pumpyoke')
    .exitOverride()
    .description(SUMMARY)
    .version(VERSION, '--version', 'print the version')
    .helpOption('-h, --help', 'print this help')
    .helpCommand('help [command]', 'print the help of a command')
    .configureOutput({
      getOutHasColors: () => out.colour,
      getErrHasColors: () => err.colour,
      getOutHelpWidth: () => out.width,
      getErrHelpWidth: () => err.width,
    })
    .configureHelp({ showGlobalOptions: true, styleTitle: title })
    .showHelpAfterError('Run pumpyoke --help for what it can do.')
    .addHelpText('before', examplesText(EXAMPLES))
    .addHelpText('after', STATUSES);
  addCommonOptions(program);
  addLayoutCommand(program, session, check);
  addLayoutCommand(program, session, flow);
  addLayoutCommand(program, session, require);
  addLayoutCommand(program, session, reach);
  return program;
}
