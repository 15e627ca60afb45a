import { existsSync, readFileSync } from 'node:fs';
import { dirname, isAbsolute, relative, resolve } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import type { Command } from 'commander';
import { examplesText } from '../layout-command.js';
import { type GivenOptions, reportOptions } from '../options.js';
import { put } from '../output.js';
import type { Session } from '../session.js';
import { shippedSchema } from '../shipped-schema.js';
import { UsageFault } from '../usage-fault.js';

const EXAMPLES = [
  'pumpyoke new rig --out truck.yaml',
  'pumpyoke new lay | pumpyoke flow -',
  'pumpyoke new progressive --out lay.yaml',
];

/** What there is to start from, and the command that answers it. */
export const STARTS = {
  rig: 'an engine whose typing is to be proved: check',
  lay: 'hose on the ground from the engine to its nozzles: flow, require, reach, clock',
  progressive: 'a lay that grows a section at a time: advance',
  relay: 'a portable tank and a light pump in the line: flow, advance, clock',
  pump: 'an engine with pumps of your own, curve and limits: check',
} as const;

export type Start = keyof typeof STARTS;

const LIST = Object.entries(STARTS)
  .map(([name, what]) => `  ${name.padEnd(12)} ${what}`)
  .join('\n');

const NOTE = `\nKinds:\n${LIST}\n\nEvery figure in them is invented.\n`;

/**
 * Where an editor finds the schema from a layout: by a path within its own folder, which goes with it to another machine,
 * or else by the address of the file.
 */
export function schemaFrom(folder: string, schema: string): string {
  const path = relative(folder, schema).replaceAll('\\', '/');
  return path.startsWith('..') || isAbsolute(path) ? pathToFileURL(schema).href : `./${path}`;
}

function layoutOf(kind: Start, out: string | undefined): string {
  const file = fileURLToPath(new URL(`../data/new/${kind}.yaml`, import.meta.url));
  const folder = out === undefined ? process.cwd() : dirname(resolve(out));
  const schema = schemaFrom(folder, shippedSchema('layout'));
  return readFileSync(file, 'utf8').replace(/(\$schema=)\S+/, (_, key) => `${key}${schema}`);
}

/** `pumpyoke new`: a commented layout to start from. */
export function addNewCommand(program: Command, _: Session): void {
  const summary = 'a commented layout to start from, every figure invented';
  program
    .command('new')
    .summary(summary)
    .description(summary)
    .argument('[kind]', `${Object.keys(STARTS).join(', ')} (default: rig)`)
    .addHelpText('before', examplesText(EXAMPLES))
    .addHelpText('after', NOTE)
    .action((word: string | undefined, _options: unknown, self: Command) => {
      const given = self.optsWithGlobals<GivenOptions>();
      const { out, quiet } = reportOptions({ ...given, format: undefined, json: undefined });
      if (given.json || given.format !== undefined)
        throw new UsageFault('a layout is YAML, so --json and --format say nothing of it');
      const kind = word ?? 'rig';
      if (!Object.hasOwn(STARTS, kind))
        throw new UsageFault(
          `there is no layout ${kind} to start from: ${Object.keys(STARTS).join(', ')} are there`,
        );
      if (out !== undefined && existsSync(out))
        throw new UsageFault(
          `${out} is there already, and a new layout would wipe it out: give another name`,
        );
      put(layoutOf(kind as Start, out), out, quiet);
    });
}
