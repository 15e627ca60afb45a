import { writeAll } from './write-all.js';
import { WriteFault } from './write-fault.js';

const OUT = 1;
const ERR = 2;

const codeOf = (error: unknown) => (error as NodeJS.ErrnoException).code;

let closed = false;

/**
 * To standard output. Whoever reads us may stop reading, `| head -1` is no error, and nothing more is said then; every other
 * text that does not arrive is a `WriteFault`.
 */
export function writeOut(text: string): void {
  if (closed) return;
  try {
    writeAll(OUT, text);
  } catch (error) {
    if (codeOf(error) !== 'EPIPE') throw new WriteFault('standard output', error);
    closed = true;
  }
}

/** To standard error; where that does not arrive there is nobody left to tell, and the status says it. */
export function writeErr(text: string): void {
  try {
    writeAll(ERR, text);
  } catch {}
}
