import { fstatSync, statSync } from 'node:fs';
import { plain } from '../report/plain.js';
import { identityOf, ifThere, type Target, targetOf } from './target.js';
import { UsageFault } from './usage-fault.js';
import { whyNot } from './write-fault.js';

/** A file that an option names to be written: `['--out', 'report.html']`. */
export type OutputFile = [option: string, file: string | undefined];

const STANDARD_INPUT = 0;

/** Identities of the files that are read, standard input among them, and what they are called. */
function identitiesOf(inputs: readonly string[]): Map<string, string> {
  const found = new Map<string, string>();
  const input = ifThere(() => fstatSync(STANDARD_INPUT));
  if (input?.isFile()) found.set(identityOf(input), 'the file on standard input');
  for (const file of inputs) {
    const stats = statSync(file, { throwIfNoEntry: false });
    if (stats?.isFile()) found.set(identityOf(stats), plain(file));
  }
  return found;
}

function writable(option: string, file: string): Target {
  try {
    return targetOf(file);
  } catch (error) {
    throw new UsageFault(`cannot write ${option} ${plain(file)}: ${whyNot(error)}`);
  }
}

/**
 * Refuses, before anything is computed, to write what cannot be written, over a file that is read in the same run, or two
 * answers over each other, by whatever names the files go.
 */
export function checkOutputs(outputs: readonly OutputFile[], inputs: readonly string[]): void {
  const read = identitiesOf(inputs);
  const written = new Map<string, string>();
  for (const [option, file] of outputs) {
    if (file === undefined || file === '-') continue;
    const { identity, stats } = writable(option, file);
    if (stats && !stats.isFile()) continue;
    const input = read.get(identity);
    if (input !== undefined)
      throw new UsageFault(
        `${option} ${plain(file)} would write over ${input}, which is read here; name another file. Nothing was written`,
      );
    const other = written.get(identity);
    if (other !== undefined)
      throw new UsageFault(
        `${other} and ${option} name the same file: one would write over the other. Nothing was written`,
      );
    written.set(identity, option);
  }
}
