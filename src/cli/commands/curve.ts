import { type Command, Option } from 'commander';
import type { FitShape } from '../../statistics/head-curve-fit.js';
import { EXIT } from '../exit-status.js';
import { examplesText } from '../layout-command.js';
import { type GivenOptions, reportOptions } from '../options.js';
import { documentText, jsonText, put } from '../output.js';
import type { Session } from '../session.js';
import { UsageFault } from '../usage-fault.js';

interface Given extends GivenOptions {
  against?: string;
  shape?: FitShape | 'auto';
  write?: string;
  yaml?: boolean;
}

const EXAMPLES = [
  'pumpyoke curve bench.csv',
  'pumpyoke curve bench.csv --against demo-highlift',
  'pumpyoke curve bench.csv --against last-year.yaml --out report.html',
  'pumpyoke curve bench.csv --write pump-a.yaml',
];

/** What readings of a pump come to; needs no layout. */
export function addCurveCommand(program: Command, session: Session): void {
  const summary = 'what curve do bench readings of a pump make, and how worn is it?';
  program
    .command('curve')
    .summary(summary)
    .description(summary)
    .argument('<readings>', 'readings as CSV or YAML, or - for standard input')
    .option('--against <pump>', 'what to compare with: an id of the catalogue, or a file that --write wrote')
    .addOption(
      new Option('--shape <shape>', 'how the fitted curve runs')
        .choices(['auto', 'power', 'quadratic', 'monotone'])
        .default('auto'),
    )
    .option('--write <file>', 'write the pump to FILE, as model: of a layout takes it')
    .option('--yaml', 'print the pump and nothing else')
    .addHelpText('before', examplesText(EXAMPLES))
    .action(async (path: string, _: unknown, self: Command) => {
      const given = self.optsWithGlobals<Given>();
      const options = reportOptions(given);
      await import('../plain-schemas.js');
      const { readBench } = await import('../../readings/read-bench.js');
      const { curveOf, NoCurve } = await import('../../study/bench/curve.js');
      const bench = readBench(path, given.against);
      const shape = given.shape === 'auto' ? undefined : given.shape;
      const answer = await curveOf(bench, { shape }).catch((error: unknown) => {
        throw error instanceof NoCurve ? new UsageFault(`${path}: ${error.message}`) : error;
      });
      const { curveRow, curveRowYaml } = await import('../../report/bench/write-row.js');
      if (given.write) await put(curveRowYaml(answer, bench, options.units), given.write, options.quiet);
      session.status = EXIT.yes;
      if (given.yaml) return put(curveRowYaml(answer, bench, options.units), options.out, options.quiet);
      if (options.format === 'csv' || options.format === 'card')
        throw new UsageFault(`curve has no ${options.format}: take --format json, text, markdown or html`);
      if (options.format === 'json') {
        const { treeInUnits } = await import('../../report/json.js');
        const { curveTree } = await import('../../report/bench/json-curve.js');
        const tree = curveTree(answer, curveRow(answer, bench, options.units), options.units);
        return put(jsonText(treeInUnits(tree, options.units)), options.out, options.quiet);
      }
      const { curveDocument } = await import('../../report/bench/curve-document.js');
      const document = curveDocument(answer, options.units, options.quiet);
      await put(
        await documentText(document, options.format, options.out, session.terminal),
        options.out,
        options.quiet,
      );
    });
}
