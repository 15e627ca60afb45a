import { sentence } from '../report/words.js';
import { colourFlag, decideColour, widthOf } from './colour.js';
import { EXIT } from './exit-status.js';
import { writeErr } from './standard-output.js';
import { WriteFault } from './write-fault.js';

/** What is known of where the output goes, found out once. */
export interface Terminal {
  flag: boolean | undefined;
  out: { colour: boolean; width: number };
  err: { colour: boolean; width: number };
}

export function terminalFor(args: readonly string[]): Terminal {
  const flag = colourFlag(args);
  const of = (stream: NodeJS.WriteStream) => ({
    colour: decideColour(flag, process.env, stream),
    width: widthOf(process.env, stream),
  });
  return { flag, out: of(process.stdout), err: of(process.stderr) };
}

/** Whoever reads us may stop reading: `| head -1` is no error, and nothing more needs to be said. */
export function watchStreams(): void {
  for (const stream of [process.stdout, process.stderr]) {
    stream.on('error', (error: NodeJS.ErrnoException) => {
      if (error.code === 'EPIPE' || stream === process.stderr) return;
      // What waited for a slow reader is lost, and so is whatever comes after it.
      writeErr(`error: ${sentence(new WriteFault('standard output', error).message)}\n`);
      process.exit(EXIT.notWritten);
    });
  }
}

/**
 * Ends the program once all of its output is on its way. Ending by itself it would first tidy up a heap that nobody needs any
 * more, which takes as long as a dozen solves; ending before that would cut what still waits for a slow reader.
 */
export function endOnceWritten(status: number): void {
  process.exitCode = status;
  const streams = [process.stdout, process.stderr];
  const waiting = () => streams.some((stream) => !stream.destroyed && stream.writableLength > 0);
  const end = () => {
    if (!waiting()) process.exit();
  };
  for (const stream of streams) if (!stream.destroyed && stream.writableLength > 0) stream.write('', end);
  end();
}
