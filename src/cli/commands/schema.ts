import { readFileSync } from 'node:fs';
import type { Command } from 'commander';
import { examplesText } from '../layout-command.js';
import { type GivenOptions, reportOptions } from '../options.js';
import { put } from '../output.js';
import type { Session } from '../session.js';
import { shippedSchema } from '../shipped-schema.js';
import { UsageFault } from '../usage-fault.js';

const EXAMPLES = [
  'pumpyoke schema --out layout.schema.json',
  'pumpyoke schema engine --out engine.schema.json',
];

const NOTE = `
An editor with a YAML language server checks, completes and explains a layout whose
first line names the schema:
  # yaml-language-server: $schema=layout.schema.json
pumpyoke new writes that line.
`;

export const SCHEMA_NAMES = ['layout', 'engine'] as const;

/** `pumpyoke schema`: the JSON Schema by which editors know a layout. */
export function addSchemaCommand(program: Command, _: Session): void {
  const summary = 'the JSON Schema of a layout, for editors';
  program
    .command('schema')
    .summary(summary)
    .description(summary)
    .argument('[document]', `${SCHEMA_NAMES.join(' or ')} (default: layout)`)
    .addHelpText('before', examplesText(EXAMPLES))
    .addHelpText('after', NOTE)
    .action((document: string | undefined, _options: unknown, self: Command) => {
      const { out, quiet, format } = reportOptions(self.optsWithGlobals<GivenOptions>());
      if (format !== 'json' && format !== 'text') throw new UsageFault('a schema is JSON, and nothing else');
      const name = SCHEMA_NAMES.find((one) => one === (document ?? 'layout'));
      if (name === undefined)
        throw new UsageFault(`there is no schema of ${document}: ${SCHEMA_NAMES.join(' or ')} is wanted`);
      put(readFileSync(shippedSchema(name), 'utf8'), out, quiet);
    });
}
