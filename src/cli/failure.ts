import { CommanderError } from 'commander';
import { paintFor } from '../report/paint.js';
import { plain } from '../report/plain.js';
import { sentence } from '../report/words.js';
import { wrap } from '../report/wrap.js';
import { EXIT, type ExitStatus } from './exit-status.js';
import { writeErr } from './standard-output.js';
import type { Terminal } from './terminal.js';
import { UsageFault } from './usage-fault.js';
import { WriteFault } from './write-fault.js';

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
  writeErr(faultLine(error));
  if (process.env.PUMPYOKE_DEBUG) writeErr(stackOf(error));
  return EXIT.fault;
}

function told(message: string, status: ExitStatus, { err }: Terminal): ExitStatus {
  // In a log or a pipe one line is one error.
  const room = process.stderr.isTTY ? err.width : Number.POSITIVE_INFINITY;
  const [first, ...rest] = wrap(`error: ${message}`, room);
  const head = first.replace(/^error:/, paintFor(err.colour).tone('bad', 'error:'));
  writeErr(`${[head, ...rest].join('\n')}\n`);
  return status;
}

const wrongInput = (message: string, terminal: Terminal): ExitStatus =>
  told(message, EXIT.wrongInput, terminal);

/** The one place where an error becomes words and a status. */
export async function fail(error: unknown, terminal: Terminal): Promise<ExitStatus> {
  const { err } = terminal;
  if (error instanceof CommanderError) return error.exitCode === 0 ? EXIT.yes : EXIT.wrongInput;
  if (error instanceof WriteFault) return told(sentence(error.message), EXIT.notWritten, terminal);
  if (error instanceof UsageFault) return wrongInput(error.message, terminal);
  const { LayoutProblems } = await import('../layout/problem.js');
  if (error instanceof LayoutProblems) {
    const { problemsText } = await import('../report/problems.js');
    writeErr(problemsText(error, err));
    return EXIT.wrongInput;
  }
  const { NoTyping } = await import('../study/rating.js');
  if (error instanceof NoTyping) return wrongInput(sentence(error.message), terminal);
  const { NoSteadyAnswer } = await import('../study/no-steady-answer.js');
  if (error instanceof NoSteadyAnswer) {
    const { noSteadyAnswerText } = await import('../report/no-steady-answer.js');
    writeErr(noSteadyAnswerText(error, err));
    return EXIT.noAnswer;
  }
  return ownFault(error);
}
