import { spawnSync } from 'node:child_process';
import { median } from './timing.js';

/** Wall time of the program over that of a bare node, started turn about; median of each. */
export function timeStartUp(program: readonly string[], runs = 30): number {
  return timeAgainst(program, ['-e', '0'], runs);
}

/** Wall time of one run of node over that of another, started turn about; median of each. */
export function timeAgainst(program: readonly string[], yardstick: readonly string[], runs = 30): number {
  const once = (args: readonly string[]) => {
    const started = performance.now();
    const { status, error } = spawnSync(process.execPath, args, { stdio: 'ignore' });
    if (error) throw error;
    return { time: performance.now() - started, status };
  };
  const bare: number[] = [];
  const ours: number[] = [];
  for (let run = 0; run < runs + 2; run += 1) {
    const empty = once(yardstick);
    const full = once(program);
    // 0 and 1 both answer the question; anything else did not do the work that is timed.
    if (full.status !== 0 && full.status !== 1)
      throw new Error(`${program.join(' ')} ended with ${full.status}`);
    if (run < 2) continue;
    bare.push(empty.time);
    ours.push(full.time);
  }
  return median(ours) / median(bare);
}
