import { type Command, InvalidArgumentError } from 'commander';
import { examplesText } from '../layout-command.js';
import type { Session } from '../session.js';
import { UsageFault } from '../usage-fault.js';
import { addDrillOptions, type GivenDrillOptions, passOption, sheetOption } from './drill-options.js';

const EXAMPLES = [
  'pumpyoke drill --list-topics',
  'pumpyoke drill --topic single-line --level 2 --seed 7 --key',
  'pumpyoke drill --mix --count 20 --choices 4 --out sheet.html --key-out key.html --form-out answers.csv',
  'pumpyoke drill mark answers.csv',
  'pumpyoke drill --ask',
];

const MARK_EXAMPLES = [
  'pumpyoke drill mark answers.csv',
  'pumpyoke drill mark anna.csv ben.csv --pass 70 --out marks.html',
  'pumpyoke drill mark answers.csv --mix --count 20 --seed 7 --sheet 9F3A-1C2B',
];

const MARK_NOTE = `
A file has one student a row (student,1,2,3), or is one student's (problem,answer).
Its first row may say which sheet it answers: --form-out writes such a form. Answers
that carry the code of one sheet are never marked by the key of another.
`;

function addMark(drill: Command, session: Session): void {
  drill
    .command('mark')
    .summary('mark answers, find the slip behind each wrong one, and say what to teach again')
    .description('mark answers, find the slip behind each wrong one, and say what to teach again')
    .argument('<file...>', 'CSV files of answers, or - for standard input')
    .addOption(sheetOption())
    .addOption(passOption())
    .option('--key-file <file>', 'mark by a key that was saved as JSON, whichever version made it')
    .option('--undecided-out <file>', 'write what could not be read to a CSV, to be decided by hand')
    .option('--decisions <file>', 'take such a CSV back: right, wrong or blank in its last column')
    .addHelpText('before', examplesText(MARK_EXAMPLES))
    .addHelpText('after', MARK_NOTE)
    .action(async (files: string[], _: unknown, self: Command) => {
      const { runDrill } = await import('./drill-run.js');
      const given = self.optsWithGlobals<GivenDrillOptions>();
      const unitsSaid = self.getOptionValueSourceWithGlobals('units') !== 'default';
      session.status = await runDrill({ mark: files, unitsSaid }, given, session.terminal);
    });
}

function keyFormFrom(text: string): 'short' | 'full' {
  if (text === 'short' || text === 'full') return text;
  throw new InvalidArgumentError('short or full is wanted.');
}

function refuseTogether(given: GivenDrillOptions): void {
  if (!given.ask) return;
  const sheetOnly = {
    key: '--key',
    keyOut: '--key-out',
    formOut: '--form-out',
    giftOut: '--gift-out',
    versions: '--versions',
    blueprint: '--blueprint',
    out: '--out',
    json: '--json',
    format: '--format',
  };
  for (const [name, option] of Object.entries(sheetOnly)) {
    if (given[name as keyof typeof sheetOnly] !== undefined) {
      throw new UsageFault(
        `--ask poses problems at the terminal and ${option} is for a sheet: give one of them`,
      );
    }
  }
}

/** `pumpyoke drill`: problems for pump operators, their key, their marking, and a tutor at the terminal. */
export function addDrillCommand(program: Command, session: Session): void {
  const summary = 'worked problems for pump operators, with keys; marks the answers';
  const drill = program
    .command('drill')
    .summary(summary)
    .description(summary)
    .addHelpText('before', examplesText(EXAMPLES));
  addDrillOptions(drill)
    .option('--key', 'print the key behind the problems')
    .option('--key-out <file>', 'write the key to FILE, apart from the problems')
    .option('--form-out <file>', 'write an empty CSV for the answers, which says what sheet it is for')
    .option('--key-form <form>', 'short (answer and steps) or full (default: full)', keyFormFrom)
    .option('--reference', "print the rule set's figures in a box on the sheet")
    .option('--gift-out <file>', 'write a quiz with its answers in GIFT for a learning system; wants --key')
    .option('--list-topics', 'the topics that there are, with their levels')
    .option('--ask', 'pose problems here, one at a time, and explain')
    .action(async (_: unknown, self: Command) => {
      const given = self.optsWithGlobals<GivenDrillOptions>();
      refuseTogether(given);
      const { runDrill } = await import('./drill-run.js');
      const task = given.ask ? 'ask' : given.listTopics ? 'topics' : 'sheet';
      session.status = await runDrill(task, given, session.terminal);
    });
  addMark(drill, session);
}
