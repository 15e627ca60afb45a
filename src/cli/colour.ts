export interface Stream {
  isTTY?: boolean;
  columns?: number;
}

type Environment = Record<string, string | undefined>;

const FALSE_WORDS = new Set(['0', 'false', 'no', 'off']);

/** The last of `--color` and `--no-color`; read ahead of the parser, because its own errors have colour too. */
export function colourFlag(args: readonly string[]): boolean | undefined {
  const end = args.indexOf('--');
  const flags = (end < 0 ? args : args.slice(0, end)).filter(
    (arg) => arg === '--color' || arg === '--no-color',
  );
  const last = flags.at(-1);
  return last === undefined ? undefined : last === '--color';
}

/**
 * Whether a stream gets colour. Decided once a stream, in this order: the flag, a NO_COLOR that is not empty,
 * FORCE_COLOR, and then whether it is a terminal that is not dumb.
 */
export function decideColour(flag: boolean | undefined, environment: Environment, stream: Stream): boolean {
  if (flag !== undefined) return flag;
  if (environment.NO_COLOR) return false;
  const forced = environment.FORCE_COLOR;
  if (forced !== undefined) return !FALSE_WORDS.has(forced.toLowerCase());
  return stream.isTTY === true && environment.TERM !== 'dumb';
}

const USUAL_WIDTH = 80;

/** Columns of the terminal; COLUMNS says it where the output goes through a pipe. */
export function widthOf(environment: Environment, stream: Stream): number {
  const told = Number(environment.COLUMNS);
  return stream.columns || (Number.isInteger(told) && told > 0 ? told : USUAL_WIDTH);
}
