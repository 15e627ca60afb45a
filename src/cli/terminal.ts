import { colourFlag, decideColour, widthOf } from './colour.js';

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
export function endQuietlyOnClosedPipe(): void {
  for (const stream of [process.stdout, process.stderr]) {
    stream.on('error', (error: NodeJS.ErrnoException) => {
      if (error.code !== 'EPIPE') throw error;
    });
  }
}
