import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const at = (path: string): string => fileURLToPath(new URL(`../../${path}`, import.meta.url));

export const EXECUTABLE = at('bin/pumpyoke.js');
export const example = (name: string): string => at(`data/examples/${name}`);

export interface Outcome {
  status: number | null;
  out: string;
  err: string;
}

export interface RunOptions {
  input?: string;
  environment?: Record<string, string>;
}

/** What the reader of these tests has set must not decide them. */
function bareEnvironment(): NodeJS.ProcessEnv {
  const { NO_COLOR, FORCE_COLOR, COLUMNS, PUMPYOKE_DEBUG, ...rest } = process.env;
  return rest;
}

/** Runs the program as it ships, which `npm test` has built. */
export function pumpyoke(args: string[], { input = '', environment = {} }: RunOptions = {}): Outcome {
  if (!existsSync(at('dist/cli.cjs'))) throw new Error('run "npm run build" first');
  const { status, stdout, stderr } = spawnSync(process.execPath, [EXECUTABLE, ...args], {
    input,
    encoding: 'utf8',
    env: { ...bareEnvironment(), ...environment },
    maxBuffer: 64 * 1024 * 1024,
  });
  return { status, out: stdout, err: stderr };
}

/** The demo with pumps whose curve is fitted by least squares, as text. */
export function quadraticLayout(): string {
  const engine = `engine:
  name: A test bench (invented)
  tank: {capacity: 500 gal, outlet_height: 1 ft}
  pumps:
    a: &pump
      model:
        name: quadratic (invented)
        rated_speed: 6,500 rpm
        shape: quadratic
        points: [[0 gpm, 415 psi], [30 gpm, 385 psi], [60 gpm, 318 psi], [85 gpm, 228 psi], [105 gpm, 110 psi]]
    b: *pump
  plumbing: {discharge: [{pipe: stainless-10s-1.5, length: 3 ft}, {check_valve: swing}]}`;
  return readFileSync(example('demo.yaml'), 'utf8').replace(/^engine:.*$/m, engine);
}
