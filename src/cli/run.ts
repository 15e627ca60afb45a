import { EXIT, type ExitStatus } from './exit-status.js';
import { fail } from './failure.js';
import { programFor } from './program.js';
import type { Session } from './session.js';
import { terminalFor, watchStreams } from './terminal.js';

/** One run, from the words after the program's name to the status for the shell. Never throws. */
export async function run(args: string[]): Promise<ExitStatus> {
  watchStreams();
  const session: Session = { terminal: terminalFor(args), status: EXIT.yes };
  try {
    await programFor(session).parseAsync(args, { from: 'user' });
    return session.status;
  } catch (error) {
    return fail(error, session.terminal);
  }
}
