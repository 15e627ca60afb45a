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
}

/** Time per link of re-solving lays of growing length at a new throttle, all timed turn about. */
export function timeGrowth(lays: readonly BenchLay[]): GrowthResult[] {
  const tasks: (() => void)[] = [];
  const iterations = lays.map(() => ({ cold: 0, warm: 0 }));
  lays.forEach((lay, index) => {
    const { network } = lay.builder;
    const throttles = [0.93, 1, 0.96, 0.88];
    for (const start of ['cold', 'warm'] as const) {
      const solver = new NetworkSolver(network);
      solver.solve();
      let turn = 0;
      tasks.push(() => {
        for (const pump of lay.pumps) solver.setSpeed(pump, throttles[turn % throttles.length]);
        turn += 1;
        const solution = solver.solve({ warm: start === 'warm' });
        if (solution.status !== 'solved') throw new Error(solution.failure?.message);
        iterations[index][start] = Math.max(iterations[index][start], solution.iterations);
      });
    }
  });
  const times = timeTogether(tasks, 15, 20);
  const perLink = times.map((time, index) => time / lays[index >> 1].builder.links.length);
  return lays.map((lay, index) => ({
    links: lay.builder.links.length,
    coldIterations: iterations[index].cold,
    warmIterations: iterations[index].warm,
    cold: perLink[2 * index] / perLink[0],
    warm: perLink[2 * index + 1] / perLink[1],
  }));
}
