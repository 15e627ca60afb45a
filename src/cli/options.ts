import { type Command, Option } from 'commander';
import type { UnitSystem } from '../quantity/format.js';
import { UsageFault } from './usage-fault.js';

export type ReportFormat = 'text' | 'json' | 'markdown' | 'html' | 'card' | 'csv';

/** The options that every command has, as commander hands them over. */
export interface GivenOptions {
  units: UnitSystem;
  json?: boolean;
  format?: ReportFormat;
  out?: string;
  quiet?: boolean;
}

export interface ReportOptions {
  units: UnitSystem;
  format: ReportFormat;
  /** Undefined for standard output. */
  out?: string;
  quiet: boolean;
}

/** Said on the program, so that they are understood before and after the command's name. */
export function addCommonOptions(program: Command): Command {
  return program
    .addOption(new Option('--units <system>', 'units of the answer').choices(['us', 'si']).default('us'))
    .option('--json', 'the same as --format json')
    .addOption(
      new Option(
        '--format <format>',
        'look of the answer; card and csv where there is one (default: by the ending of FILE, else text)',
      ).choices(['text', 'json', 'markdown', 'html', 'card', 'csv']),
    )
    .option('--out <file>', 'write the answer to FILE instead of standard output')
    .option('--quiet', 'only the verdict, what must not be run, and who decides')
    .option('--color', 'colour, even into a pipe')
    .option('--no-color', 'no colour, even on a terminal');
}

const BY_ENDING: Record<string, ReportFormat> = {
  '.json': 'json',
  '.md': 'markdown',
  '.markdown': 'markdown',
  '.html': 'html',
  '.htm': 'html',
  '.csv': 'csv',
};

export function formatByEnding(file: string | undefined): ReportFormat {
  const ending = /\.[^./\\]+$/.exec(file ?? '')?.[0].toLowerCase() ?? '';
  return Object.hasOwn(BY_ENDING, ending) ? BY_ENDING[ending] : 'text';
}

export function reportOptions({ units, json, format, out, quiet }: GivenOptions): ReportOptions {
  if (json && format !== undefined && format !== 'json') {
    throw new UsageFault(`--json and --format ${format} ask for two different things: give one of them`);
  }
  const file = out === '-' ? undefined : out;
  return {
    units,
    format: json ? 'json' : (format ?? formatByEnding(file)),
    out: file,
    quiet: quiet ?? false,
  };
}
