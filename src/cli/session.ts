import type { ExitStatus } from './exit-status.js';
import type { Terminal } from './terminal.js';

/** One run of the program: where it prints, and what it will tell the shell. */
export interface Session {
  terminal: Terminal;
  status: ExitStatus;
}
