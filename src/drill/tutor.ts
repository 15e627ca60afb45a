import { DrillFault } from './drill-fault.js';
import { makeSheet, type Sheet, type SheetRequest } from './generate.js';
import type { MarkedAnswer } from './marking/marking.js';
import type { Level, Problem } from './problem.js';

/** Right answers in a row that lead to the next level; one wrong answer leads back. */
const RIGHT_IN_A_ROW = 2;
const LOWEST: Level = 1;
const HIGHEST: Level = 5;
/** Problems drawn at once for a level; more than there are topics, so that each is among them. */
const DRAWN = 30;
const FEWEST_DRAWN = 1;

export type Step = 'up' | 'down' | 'same';

type Standing = Omit<SheetRequest, 'level' | 'count'>;
type Maker = (request: SheetRequest) => Sheet;

/**
 * Chooses one problem after another: the level goes up after two right answers in a row and down after a wrong one, the
 * topic is the one that has been mastered least, and nothing is asked twice while there is something new.
 */
export class Tutor {
  readonly #standing: Standing;
  readonly #make: Maker;
  readonly #pools = new Map<Level, Problem[]>();
  readonly #rounds = new Map<Level, number>();
  readonly #asked = new Set<string>();
  /** Right answers by topic; a topic answered wrong is not done. */
  readonly #done = new Map<string, number>();
  #level: Level;
  #row = 0;
  #lastTopic: string | undefined;
  #number = 0;

  constructor(standing: Standing, level: Level, make: Maker = makeSheet) {
    this.#standing = standing;
    this.#level = level;
    this.#make = make;
  }

  get level(): Level {
    return this.#level;
  }

  /** @throws DrillFault where the topics or rules have no problem at all. */
  next(): Problem {
    const pool = this.#pool();
    const order = (problem: Problem) =>
      (this.#done.get(problem.topic) ?? 0) + (problem.topic === this.#lastTopic ? 0.5 : 0);
    const problem = pool.reduce((best, each) => (order(each) < order(best) ? each : best));
    pool.splice(pool.indexOf(problem), 1);
    this.#asked.add(problem.question);
    this.#lastTopic = problem.topic;
    this.#number += 1;
    return { ...problem, number: this.#number };
  }

  /** Learns from an answer and says where the level goes. */
  take({ verdict, problem }: MarkedAnswer): Step {
    if (verdict !== 'right') {
      this.#row = 0;
      return this.#move(-1);
    }
    this.#done.set(problem.topic, (this.#done.get(problem.topic) ?? 0) + 1);
    this.#row += 1;
    if (this.#row < RIGHT_IN_A_ROW) return 'same';
    this.#row = 0;
    return this.#move(1);
  }

  #move(by: 1 | -1): Step {
    const next = this.#level + by;
    if (next < LOWEST || next > HIGHEST) return 'same';
    this.#level = next as Level;
    return by > 0 ? 'up' : 'down';
  }

  #pool(): Problem[] {
    const known = this.#pools.get(this.#level);
    if (known && known.length > 0) return known;
    const round = this.#rounds.get(this.#level) ?? 0;
    this.#rounds.set(this.#level, round + 1);
    const drawn = this.#draw(this.#standing.seed + round * 1009 + this.#level);
    const fresh = drawn.filter((problem) => !this.#asked.has(problem.question));
    const pool = fresh.length > 0 ? fresh : drawn;
    this.#pools.set(this.#level, pool);
    return pool;
  }

  /** As many as there are: a lay of the trainer's own does not give as many as all topics do. */
  #draw(seed: number): Problem[] {
    for (let count = DRAWN; ; count = Math.floor(count / 2)) {
      try {
        return [...this.#make({ ...this.#standing, level: this.#level, count, seed }).problems];
      } catch (error) {
        if (!(error instanceof DrillFault) || count <= FEWEST_DRAWN) throw error;
      }
    }
  }
}
