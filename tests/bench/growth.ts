import { NetworkSolver } from '../../src/network/solver.js';
import type { BenchLay } from './lay.js';
import { timeTogether } from './timing.js';

export interface GrowthResult {
  links: number;
  coldIterations: number;
  warmIterations: number;
  /** Time per link over that of the smallest lay. */
  cold: number;
  warm: number;
  /** The same with every flow and head read into arrays as well. */
  coldRead: number;
  warmRead: number;
}

/** Time per link of re-solving lays of growing length at a new throttle, all timed turn about. */
export function timeGrowth(lays: readonly BenchLay[]): GrowthResult[] {
  const tasks: (() => void)[] = [];
  const iterations = lays.map(() => ({ cold: 0, warm: 0 }));
  lays.forEach((lay, index) => {
    const throttles = [0.93, 1, 0.96, 0.88];
    for (const start of ['cold', 'warm'] as const) {
      const solver = new NetworkSolver(lay.builder.network);
      const options = { warm: start === 'warm' };
      solver.solve();
      let turn = 0;
      const set = () => {
        for (const pump of lay.pumps) solver.setSpeed(pump, throttles[turn % throttles.length]);
        turn += 1;
      };
      tasks.push(() => {
        set();
        const failure = solver.run(options);
        if (failure) throw new Error(failure.message);
        iterations[index][start] = Math.max(iterations[index][start], solver.iterations);
      });
      tasks.push(() => {
        set();
        solver.solve(options);
      });
    }
  });
  const times = timeTogether(tasks, 15, 20);
  const growthOf = (index: number, task: number) =>
    times[4 * index + task] / lays[index].builder.links.length / (times[task] / lays[0].builder.links.length);
  return lays.map((lay, index) => ({
    links: lay.builder.links.length,
    coldIterations: iterations[index].cold,
    warmIterations: iterations[index].warm,
    cold: growthOf(index, 0),
    coldRead: growthOf(index, 1),
    warm: growthOf(index, 2),
    warmRead: growthOf(index, 3),
  }));
}
