import { fstatSync, writeSync } from 'node:fs';

const PAUSE_MILLISECONDS = 1;

let limitsHeld = false;

/** Past a limit on the size of files the system would end the program without a word; held off, the write says EFBIG. */
function holdOffSizeLimit(file: number): void {
  if (limitsHeld || !fstatSync(file).isFile()) return;
  limitsHeld = true;
  process.on('SIGXFSZ', () => {});
}

/**
 * Writes all of it and returns when the system has it, however few bytes it takes at a time. Throws what the system says.
 * Node's own streams take a part of a text that was written for the whole, and a full pipe for done.
 */
export function writeAll(file: number, text: string): void {
  holdOffSizeLimit(file);
  const bytes = Buffer.from(text);
  let from = 0;
  while (from < bytes.length) {
    try {
      from += writeSync(file, bytes, from, bytes.length - from);
    } catch (error) {
      const { code } = error as NodeJS.ErrnoException;
      if (code === 'EINTR') continue;
      if (code !== 'EAGAIN') throw error;
      // A pipe whose reader is slow.
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, PAUSE_MILLISECONDS);
    }
  }
}
