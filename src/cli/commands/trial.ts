import type { Command } from 'commander';
import { plain } from '../../report/plain.js';
import { EXIT } from '../exit-status.js';
import { examplesText } from '../layout-command.js';
import { type GivenOptions, type ReportOptions, reportOptions } from '../options.js';
import { documentText, jsonText, put } from '../output.js';
import type { Session } from '../session.js';
import { writeErr } from '../standard-output.js';
import { UsageFault } from '../usage-fault.js';

interface Given extends GivenOptions {
  readings: string;
  write?: string;
  sheet?: string;
  all?: boolean;
}

const EXAMPLES = [
  'pumpyoke trial truck.yaml --readings test-day.csv',
  'pumpyoke trial truck.yaml --readings test-day.csv --all',
  'pumpyoke trial truck.yaml --readings test-day.csv --out sheet.html',
  'pumpyoke trial truck.yaml --readings test-day.csv --write calibrated.yaml',
];

/** The readings of a test day beside what the layout predicts. */
export function addTrialCommand(program: Command, session: Session): void {
  const summary = 'does the truck pass by its readings of the day, and what is wrong where they are off?';
  program
    .command('trial')
    .summary(summary)
    .description(summary)
    .argument('<layout>', 'the layout file, or - for standard input')
    .requiredOption('--readings <file>', 'what was read, as CSV or YAML')
    .option('--all', 'every reading, and not only those that a screen has room for')
    .option('--write <file>', 'write the layout to FILE as the readings have it')
    .option('--sheet <file>', 'write the filled sheet to FILE as CSV')
    .addHelpText('before', examplesText(EXAMPLES))
    .action(async (path: string, _: unknown, self: Command) => {
      const given = self.optsWithGlobals<Given>();
      const options = reportOptions(given);
      if (options.format === 'csv' || options.format === 'card')
        throw new UsageFault(
          `trial has no ${options.format}: take --sheet FILE, or --format json, text, markdown or html`,
        );
      if (path === '-' && given.readings === '-')
        throw new UsageFault('layout and readings cannot both come from standard input');
      if (path === '-' && given.write)
        throw new UsageFault('--write changes a copy of the layout file: name it instead of -');
      await import('../plain-schemas.js');
      const { readLayout } = await import('../../layout/read-layout.js');
      const { layout } = readLayout(path);
      const { readTrial } = await import('../../readings/read-trial.js');
      const readings = readTrial(given.readings, layout);
      const { trialOf } = await import('../../study/trial/trial.js');
      const { answer, ranked } = await trialOf(layout, readings);
      if (given.write) await writeCalibrated(given.write, readings.file, options, { layout, answer, ranked });
      if (given.sheet) {
        const { filledSheet } = await import('../../report/bench/filled-sheet.js');
        await put(filledSheet(answer, options.units), given.sheet, options.quiet);
      }
      session.status = answer.verdict === 'fails' ? EXIT.no : EXIT.yes;
      if (options.format === 'json') {
        const { treeInUnits } = await import('../../report/json.js');
        const { trialTree } = await import('../../report/bench/json-trial.js');
        await put(
          jsonText(treeInUnits(trialTree(answer, options.units), options.units)),
          options.out,
          options.quiet,
        );
        return;
      }
      const { trialDocument } = await import('../../report/bench/trial-document.js');
      const all = given.all === true || options.format !== 'text';
      const document = trialDocument(answer, options.units, options.quiet, all);
      await put(
        await documentText(document, options.format, options.out, session.terminal),
        options.out,
        options.quiet,
      );
    });
}

type Found = { layout: import('../../layout/layout.js').Layout } & import('../../study/trial/trial.js').Trial;

/** Writes only what the readings found: where they cannot tell, a changed layout would be a guess. */
async function writeCalibrated(
  file: string,
  readings: string,
  options: ReportOptions,
  { layout, answer, ranked }: Found,
): Promise<void> {
  const { calibratedLayout, isOfTheLayout } = await import('../../report/bench/write-layout.js');
  const { rankedWords } = await import('../../report/bench/trial-words.js');
  const { figuresIn } = await import('../../report/figures.js');
  const say = (text: string) => {
    if (!options.quiet) writeErr(`${plain(text)}\n`);
  };
  if (answer.outcome !== 'found') {
    say(`Nothing was written to ${file}: the readings point to nothing that would change the layout.`);
    return;
  }
  if (!ranked[0].causes.some(isOfTheLayout)) {
    say(
      `Nothing was written to ${file}: what was found is a matter of an instrument or a plate, not of the layout.`,
    );
    return;
  }
  const words = rankedWords(answer.ranked[0], figuresIn(options.units));
  const head = [
    `Calibrated by the readings of ${readings.split(/[\\/]/).pop()}: ${words}.`,
    'Mend it, and go back to the layout that this was made from.',
  ];
  await put(calibratedLayout(layout, ranked[0], head), file, options.quiet);
}
