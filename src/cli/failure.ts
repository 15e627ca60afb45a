import { CommanderError } from 'commander';
import { paintFor } from '../report/paint.js';
import { plain } from '../report/plain.js';
import { sentence } from '../report/words.js';
import { wrap } from '../report/wrap.js';
import { EXIT, type ExitStatus } from './exit-status.js';
import type { Terminal } from './terminal.js';
import { UsageFault } from './usage-fault.js';

const LONGEST_MESSAGE = 200;

function firstLine(error: unknown): string {
  const message = error instanceof Error ? error.message : String(error);
  return message.split(/[\r\n]/)[0].slice(0, LONGEST_MESSAGE);
}

function faultLine(error: unknown): string {
  return `pumpyoke: a fault of the program's own: ${sentence(plain(firstLine(error)))} Please report it with the layout; PUMPYOKE_DEBUG=1 shows where it happened.\n`;
}

const stackOf = (error: unknown): string => `${error instanceof Error ? error.stack : String(error)}\n`;

function ownFault(error: unknown): ExitStatus {
  process.stderr.write(faultLine(error));
  if (process.env.PUMPYOKE_DEBUG) process.stderr.write(stackOf(error));
  return EXIT.fault;
}

function wrongInput(message: string, { err }: Terminal): ExitStatus {
  // In a log or a pipe one line is one error.
  const room = process.stderr.isTTY ? err.width : Number.POSITIVE_INFINITY;
  const [first, ...rest] = wrap(`error: ${message}`, room);
  const head = first.replace(/^error:/, paintFor(err.colour).tone('bad', 'error:'));
  process.stderr.write(`${[head, ...rest].join('\n')}\n`);
  return EXIT.wrongInput;
}

/** The one place where an error becomes words and a status. */
export async function fail(error: unknown, terminal: Terminal): Promise<ExitStatus> {
  const { err } = terminal;
  if (error instanceof CommanderError) return error.exitCode === 0 ? EXIT.yes : EXIT.wrongInput;
  if (error instanceof UsageFault) return wrongInput(error.message, terminal);
  const { LayoutProblems } = await import('../layout/problem.js');
  if (error instanceof LayoutProblems) {
    const { problemsText } = await import('../report/problems.js');
    process.stderr.write(problemsText(error, err));
    return EXIT.wrongInput;
  }
  const { NoTyping } = await import('../study/rating.js');
  if (error instanceof NoTyping) return wrongInput(sentence(error.message), terminal);
  const { NoSteadyAnswer } = await import('../study/no-steady-answer.js');
  if (error instanceof NoSteadyAnswer) {
    const { noSteadyAnswerText } = await import('../report/no-steady-answer.js');
    process.stderr.write(noSteadyAnswerText(error, err));
    return EXIT.noAnswer;
  }
  return ownFault(error);
}
