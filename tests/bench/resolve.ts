import { NetworkSolver } from '../../src/network/solver.js';
import { compare } from '../support/compare.js';
import { EpanetModel, loadEpanet } from '../support/epanet.js';
import { Random } from '../support/random.js';
import type { BenchLay } from './lay.js';
import { median, timeTogether } from './timing.js';

export interface ResolveResult {
  links: number;
  /** EPANET's times over ours from a cold start, and over ours from the last solutions. */
  cold: EpanetTimes;
  warm: EpanetTimes;
  /** Our own times, microseconds, for orientation. */
  microseconds: { epanetRun: number; cold: number; warm: number };
  iterations: { epanet: number; epanetWarm: number; cold: number; warm: number };
  difference: { psi: number; gpm: number };
}

/** What is counted for EPANET over what is counted for ours. */
export interface EpanetTimes {
  /** `runH` alone over the throttle and the solve. */
  run: number;
  /** `runH` alone, started from its own last solution, over the same. */
  runWarm: number;
  /** On both sides the throttle, the start, the solve and every head and flow; read from EPANET by the calls for all at once. */
  answers: number;
  /** The same, read from EPANET by the calls for one value. */
  answersOneByOne: number;
}

/** Both converge to the same limits: 1e-6 m of head and 1e-8 m3/s (0.00016 gpm). */
const LIMITS = { headTolerance: 1e-6, flowTolerance: 1e-8 };
/** As many that none comes again while anything of its solution is remembered. */
const random = new Random(93);
const THROTTLES = Array.from({ length: 64 }, () => random.between(0.85, 1));
/** Of those the first are solved by all, and the answers compared. */
const COMPARED = 8;

/** Solves a lay anew at throttle after throttle by EPANET, by ours from nothing and by ours from the last solutions. */
export async function timeResolve(lay: BenchLay): Promise<ResolveResult> {
  const { network, hints } = lay.builder;
  const epanet = new EpanetModel(await loadEpanet(), network, hints, LIMITS);
  const cold = new NetworkSolver(network);
  const warm = new NetworkSolver(network);
  const setAll = (solver: { setSpeed(link: number, speed: number): void }, throttle: number) => {
    for (const pump of lay.pumps) solver.setSpeed(pump, throttle);
  };
  const difference = { psi: 0, gpm: 0 };
  const iterations = { epanet: 0, epanetWarm: 0, cold: 0, warm: 0 };
  warm.solve(LIMITS);
  for (const throttle of THROTTLES.slice(0, COMPARED)) {
    setAll(epanet, throttle);
    setAll(cold, throttle);
    setAll(warm, throttle);
    const theirs = epanet.solve();
    const ours = { cold: cold.solve(LIMITS), warm: warm.solve({ ...LIMITS, warm: true }) };
    iterations.epanet = Math.max(iterations.epanet, theirs.iterations);
    for (const start of ['cold', 'warm'] as const) {
      if (ours[start].status !== 'solved') throw new Error(`${start}: ${ours[start].failure?.message}`);
      iterations[start] = Math.max(iterations[start], ours[start].iterations);
      const found = compare(network, ours[start], theirs);
      difference.psi = Math.max(difference.psi, found.psi);
      difference.gpm = Math.max(difference.gpm, found.gpm);
    }
  }
  if (!(difference.psi < 0.02 && difference.gpm < 0.02)) {
    throw new Error(`the engines differ by ${difference.psi} psi and ${difference.gpm} gpm`);
  }

  let turn = 0;
  const next = () => THROTTLES[turn++ % THROTTLES.length];
  const run: number[] = [];
  const runWarm: number[] = [];
  const runEpanet = (keep: boolean, into: number[]) => {
    setAll(epanet, next());
    epanet.initialise(keep);
    const started = performance.now();
    epanet.run();
    into.push(performance.now() - started);
  };
  const warmLimits = { ...LIMITS, warm: true };
  const [coldTime, warmTime, coldRead, warmRead, , , answers, answersOneByOne] = timeTogether([
    () => {
      setAll(cold, next());
      cold.run(LIMITS);
    },
    () => {
      setAll(warm, next());
      warm.run(warmLimits);
    },
    () => {
      setAll(cold, next());
      cold.solve(LIMITS);
    },
    () => {
      setAll(warm, next());
      warm.solve(warmLimits);
    },
    () => runEpanet(false, run),
    () => {
      runEpanet(true, runWarm);
      iterations.epanetWarm = Math.max(iterations.epanetWarm, epanet.iterations());
    },
    () => {
      runEpanet(false, []);
      epanet.readAtOnce();
    },
    () => {
      runEpanet(false, []);
      epanet.readOneByOne();
    },
  ]);
  epanet.close();
  const over = (ours: number, read: number): EpanetTimes => ({
    run: settled(run) / ours,
    runWarm: settled(runWarm) / ours,
    answers: answers / read,
    answersOneByOne: answersOneByOne / read,
  });
  return {
    links: network.links.length,
    cold: over(coldTime, coldRead),
    warm: over(warmTime, warmRead),
    microseconds: { epanetRun: 1000 * settled(run), cold: 1000 * coldTime, warm: 1000 * warmTime },
    iterations,
    difference,
  };
}

/** The median of the later half, when everything is compiled. */
function settled(times: number[]): number {
  return median(times.slice(times.length >> 1));
}
