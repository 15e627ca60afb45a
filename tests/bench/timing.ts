/** Median of numbers. */
export function median(values: number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = Math.floor(sorted.length / 2);
  return sorted.length % 2 === 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
}

/**
 * Times several tasks turn about, so that whatever slows the machine slows all of them alike: `rounds` rounds after some to
 * warm up, each of as many calls of every task as take about `target` ms. Gives the median time of one call of each, ms.
 */
export function timeTogether(tasks: readonly (() => void)[], rounds = 25, target = 4): number[] {
  // Twice round, so that each is compiled with all of them having run.
  for (const task of [...tasks, ...tasks]) callsWithin(task, 15 * target);
  const calls = tasks.map((task) => Math.max(1, Math.round(callsWithin(task, 4 * target) / 4)));
  const times: number[][] = tasks.map(() => []);
  for (let round = 0; round < rounds; round += 1) {
    tasks.forEach((task, index) => {
      const started = performance.now();
      for (let call = 0; call < calls[index]; call += 1) task();
      times[index].push((performance.now() - started) / calls[index]);
    });
  }
  return times.map(median);
}

function callsWithin(task: () => void, milliseconds: number): number {
  const started = performance.now();
  let calls = 0;
  while (performance.now() - started < milliseconds) {
    task();
    calls += 1;
  }
  return calls;
}
