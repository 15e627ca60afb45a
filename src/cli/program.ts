import { Command, Help } from 'commander';
import { paintFor } from '../report/paint.js';
import { wrapHanging } from '../report/wrap.js';
import { advance } from './commands/advance.js';
import { addCatalogueCommand } from './commands/catalogue.js';
import { check } from './commands/check.js';
import { clock } from './commands/clock.js';
import { addCompletionCommand } from './commands/completion.js';
import { addCurveCommand } from './commands/curve.js';
import { addDrillCommand } from './commands/drill.js';
import { flow } from './commands/flow.js';
import { addNewCommand } from './commands/new.js';
import { reach } from './commands/reach.js';
import { require } from './commands/require.js';
import { addSchemaCommand } from './commands/schema.js';
import { addTrialCommand } from './commands/trial.js';
import { EXIT } from './exit-status.js';
import { addLayoutCommand, examplesText } from './layout-command.js';
import { addCommonOptions } from './options.js';
import type { Session } from './session.js';
import { writeErr, writeOut } from './standard-output.js';
import { VERSION } from './version.js';

const SUMMARY =
  'Hydraulics for fire engines that carry two pumps plumbed together: a YAML layout goes in, a verdict comes out.';

const EXAMPLES = [
  'pumpyoke new --out truck.yaml # a layout to start from',
  'pumpyoke check truck.yaml   # does it make its typing?',
  'pumpyoke flow lay.yaml      # what flows where?',
  'pumpyoke require lay.yaml   # what must the pumps do?',
  'pumpyoke reach lay.yaml     # how far does it go?',
  'pumpyoke check truck.yaml --out report.html',
];

const STATUSES = {
  [EXIT.yes]: 'answered, and the answer is yes',
  [EXIT.no]: 'answered, and the answer is no: it falls short, or a caution says stop',
  [EXIT.wrongInput]: 'the layout or the command line is wrong',
  [EXIT.noAnswer]: 'the network has no steady answer',
  [EXIT.fault]: "a fault of the program's own",
  [EXIT.notWritten]: 'the answer could not be written: a full disk, a limit on the size of files',
};

const NARROWEST = 20;
/** Below it an option's words stand under its name: beside it they would have a column of a few letters. */
const BESIDE = 64;

function statusesText(width: number): string {
  const lines = Object.entries(STATUSES).flatMap(([status, meaning]) =>
    wrapHanging(meaning, width, `  ${status.padEnd(4)}`, '      '),
  );
  return ['', 'Exit status:', ...lines].join('\n');
}

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
      writeOut,
      writeErr,
      getOutHasColors: () => out.colour,
      getErrHasColors: () => err.colour,
      getOutHelpWidth: () => out.width,
      getErrHelpWidth: () => err.width,
    })
    .configureHelp({
      showGlobalOptions: true,
      styleTitle: title,
      minWidthToWrap: NARROWEST,
      formatItem(term, termWidth, description, helper) {
        const width = helper.helpWidth ?? out.width;
        if (width >= BESIDE || !description)
          return Help.prototype.formatItem.call(this, term, termWidth, description, helper);
        return [`  ${term}`, ...wrapHanging(description, width, '      ', '      ')].join('\n');
      },
    })
    .showHelpAfterError('Run pumpyoke --help for what it can do.')
    .addHelpText('before', examplesText(EXAMPLES))
    .addHelpText('after', statusesText(out.width));
  addCommonOptions(program);
  addLayoutCommand(program, session, check);
  addLayoutCommand(program, session, flow);
  addLayoutCommand(program, session, require);
  addLayoutCommand(program, session, reach);
  addLayoutCommand(program, session, advance);
  addLayoutCommand(program, session, clock);
  addCurveCommand(program, session);
  addTrialCommand(program, session);
  addDrillCommand(program, session);
  addCatalogueCommand(program, session);
  addNewCommand(program, session);
  addSchemaCommand(program, session);
  addCompletionCommand(program, session);
  return program;
}
