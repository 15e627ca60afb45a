import type { StagingName } from '../assembly/assembly.js';
import { needOf } from '../assembly/nozzle-needs.js';
import type { OperatingPoint } from '../assembly/operating-point.js';
import { STAGING_PHRASES } from '../assembly/staging-words.js';
import { citation } from '../catalogue/citation.js';
import type { Hose } from '../catalogue/schema/hose.js';
import type { Nozzle } from '../catalogue/schema/nozzle.js';
import type { Layout } from '../layout/layout.js';
import type { BranchStep, HoseStep, NozzleStep, Step } from '../layout/step.js';
import { bearingLimit } from '../limits/hose-limit.js';
import { hoseLoads } from '../limits/hose-load.js';
import { FOOT } from '../physics/customary.js';
import { pressureOfHeight } from '../physics/elevation.js';
import type { Statement } from './answer.js';
import { assumptions } from './assumptions.js';
import { gated, gatedCautions } from './gated.js';
import { laidHose } from './ground-line.js';
import { ifSteady } from './if-steady.js';
import type { ReachAnswer, ReachCell, ReachStaging } from './reach-answer.js';
import { Rig, SolvedAssembly } from './rig.js';
import { solverReport } from './solver-report.js';

const SIDE_BY_SIDE: readonly StagingName[] = ['parallel', 'series', 'series_reversed', 'a', 'b'];

/** Slopes and laterals that the table has unless others are asked for; a choice of this program. */
export const USUAL_GRADES: readonly number[] = [0, 0.1, 0.2, 0.3, 0.5];
export const USUAL_LATERALS: readonly number[] = [0, 1, 2, 4];

/** Longer lays are not looked at, m (20,000 ft): crews have laid 15,000 to 20,000 ft, trade article. */
const LONGEST = 20_000 * FOOT;
const SHORTEST = 1 * FOOT;
/** Lengths that are looked at, m: close where lays are short, by half as much again farther out. */
const LENGTHS: readonly number[] = [
  SHORTEST,
  ...[
    25, 50, 100, 150, 200, 300, 400, 600, 800, 1000, 1400, 2000, 2800, 4000, 5600, 8000, 11_000, 15_000,
  ].map((feet) => feet * FOOT),
  LONGEST,
];
/** Lengths are found to this, m. */
const LENGTH_FOUND = 0.5 * FOOT;

/** Raised where the layout has no hose or nozzle to ask about, and none is named. */
export class NothingToReach extends Error {
  override name = 'NothingToReach';
}

export interface ReachOptions {
  grades?: readonly number[];
  laterals?: readonly number[];
  /** In place of those of the layout's lay. */
  hose?: { hose: Hose; modelName: string; id?: string };
  nozzle?: { nozzle: Nozzle; modelName: string; id?: string };
}

/** What the lays that are tried are made of. */
interface Parts {
  hose: HoseStep;
  nozzle: NozzleStep;
  branch?: BranchStep;
  /** The first line that branches off, up to and with its nozzle. */
  lateral?: { steps: Step[]; hose?: HoseStep; nozzle: NozzleStep };
}

/**
 * How far, and how high, does each staging take a nozzle on this hose, by slope and by laterals that stand open? The
 * trunk climbs at one grade; laterals part from it at even distances and lie level; each nozzle has the pressure that it is
 * laid for.
 */
export async function reachOf(layout: Layout, options: ReachOptions = {}): Promise<ReachAnswer> {
  const { grades = USUAL_GRADES, laterals = USUAL_LATERALS } = options;
  const rig = await Rig.of(layout);
  const parts = partsOf(layout, options);
  const counts = parts.lateral ? laterals : laterals.filter((count) => count === 0);
  if (counts.length === 0)
    throw new NothingToReach('the layout has no lateral: ask for 0 laterals, or give its lay a branch');
  const trials = SIDE_BY_SIDE.filter((one) => rig.can(one)).map((one) => new Trial(rig, one, parts));
  const own = trials.find(({ staging }) => staging === layout.staging) ?? trials[0];
  const first = ifSteady(() => own.at(parts.hose.length, 0, counts[0])) ?? own.shut;
  const cautionsIn = ({ staging, shut }: Trial) =>
    gatedCautions({
      layout,
      cases: [
        { kind: 'laid_shut', when: `with every nozzle shut, ${STAGING_PHRASES[staging]}`, point: shut },
      ],
    });
  const stagings = trials.map((trial) => ({
    ...trial.answer(grades, counts),
    stops: trial === own ? [] : cautionsIn(trial).filter(({ level }) => level === 'stop'),
  }));
  const need = needOf(first.assembly.nozzles.at(-1) as OperatingPoint['assembly']['nozzles'][number]);
  return {
    question: 'reach',
    title: layout.title,
    engine: layout.engine.name,
    site: first.assembly.site,
    throttle: rig.throttle.a,
    hose: parts.hose.modelName,
    hoseSource: citation(parts.hose.hose),
    nozzle: {
      name: parts.nozzle.modelName,
      pressure: need?.pressure ?? 0,
      source: need?.source ?? '',
    },
    lateral: lateralAnswer(parts, first),
    carried: carriedOf(layout, parts.hose),
    longest: LONGEST,
    downhill: grades.some((grade) => grade < 0)
      ? { height: 100 * FOOT, pressure: pressureOfHeight(100 * FOOT, first.assembly.site.waterDensity) }
      : undefined,
    asLaid: layout.staging,
    stagings,
    hoseWithoutLimit: bearingLimit(parts.hose.hose) ? [] : [parts.hose.modelName],
    cautions: cautionsIn(own),
    assumptions: [...notHeld(layout), ...assumptions(layout, first.assembly.site)],
    solver: solverReport(first),
  };
}

/** A table of lays is told at a throttle, not at a pressure that a governor holds for one of them. */
function notHeld({ throttle }: Layout): Statement[] {
  if (throttle.by === 'speed') return [];
  return [
    {
      template: 'The layout has {pressure} held at the discharge; reach is told at governed speed instead',
      values: { pressure: { value: throttle.discharge_pressure, dimension: 'pressure' } },
    },
  ];
}

/** What a length comes to. */
type Outcome = 'serves' | 'nozzle' | 'hose' | 'cannot_be' | 'no_steady_answer';

/** One staging, tried on one lay after another. */
class Trial {
  readonly staging: StagingName;
  /** A first length with every nozzle shut. */
  readonly shut: OperatingPoint;
  private readonly rig: Rig;
  private readonly parts: Parts;

  constructor(rig: Rig, staging: StagingName, parts: Parts) {
    this.rig = rig;
    this.staging = staging;
    this.parts = parts;
    this.shut = this.solve(parts.hose.length, 0, 0, 'shut');
  }

  at(length: number, grade: number, laterals: number): OperatingPoint {
    return this.solve(length, grade, laterals, 'open');
  }

  answer(grades: readonly number[], laterals: readonly number[]): ReachStaging {
    const { shut, parts } = this;
    const outlet = shut.assembly.outlets[0];
    const shutPressure = shut.gaugePressure(outlet.place);
    const limit = bearingLimit(parts.hose.hose);
    return {
      staging: this.staging,
      shutPressure,
      overHose:
        limit !== undefined && shutPressure > limit.pressure
          ? { limit: limit.pressure, source: limit.source }
          : undefined,
      stops: [],
      rows: grades.map((grade) => ({ grade, cells: laterals.map((count) => this.reach(grade, count)) })),
    };
  }

  /**
   * The longest trunk that serves every nozzle in a state that can be, with hose within its limit flowing and shut. Uphill and
   * on the level margins fall steadily with its length. Downhill each length adds height as well as friction, and a short lay
   * may be past the end of a curve: lengths are looked at one after another.
   */
  private reach(grade: number, laterals: number): ReachCell {
    let best: { from: number; to: number } | undefined;
    let from: number | undefined;
    let ends: Outcome = 'nozzle';
    let last: number = SHORTEST;
    for (const length of LENGTHS) {
      const found = this.outcome(length, grade, laterals);
      if (found === 'serves') {
        from ??= from === undefined && length > SHORTEST ? this.edge(last, length, grade, laterals) : length;
        best = { from, to: length };
        ends = 'serves';
      } else {
        if (best && ends === 'serves') {
          best.to = this.edge(length, best.to, grade, laterals);
          ends = this.outcome(best.to + LENGTH_FOUND, grade, laterals);
          if (ends === 'serves') ends = found;
        }
        if (best === undefined) ends = found;
        from = undefined;
        if (grade >= 0 && (found === 'nozzle' || best)) break;
        // Below this height it is over its limit at every greater length too.
        if (found === 'hose' && grade < 0) break;
      }
      last = length;
    }
    if (best === undefined) return cellOf(laterals, 0, grade, ends === 'serves' ? 'nozzle' : ends);
    const limit = ends === 'serves' ? 'longest_looked_at' : ends;
    const cell = cellOf(laterals, best.to, grade, limit);
    return best.from > SHORTEST ? { ...cell, from: best.from } : cell;
  }

  /** What a length comes to: it serves, or what it fails by. */
  private outcome(length: number, grade: number, laterals: number): Outcome {
    if (this.overWhenShut(length, grade, laterals)) return 'hose';
    const found = gated(() => this.at(length, grade, laterals));
    if (found === undefined) return 'no_steady_answer';
    if (found.why) return 'cannot_be';
    if (leastMargin(found.point) < 0) return 'nozzle';
    return hoseLoads(found.point, laidHose(found.point.assembly)).some(({ hose, highest }) => {
      const limit = bearingLimit(hose)?.pressure;
      return limit !== undefined && highest > limit;
    })
      ? 'hose'
      : 'serves';
  }

  /** With every nozzle shut water stands still, and hose at the foot of the slope bears the height as well. */
  private overWhenShut(length: number, grade: number, laterals: number): boolean {
    const { shut, parts } = this;
    const outlet = shut.totalPressure(shut.assembly.outlets[0].place);
    const depth = Math.max(0, -riseOf(length, grade));
    const { waterDensity } = shut.assembly.site;
    const lowest = (hose: Hose, height: number) => {
      const limit = bearingLimit(hose)?.pressure;
      return limit !== undefined && outlet + pressureOfHeight(height, waterDensity) > limit;
    };
    if (lowest(parts.hose.hose, depth)) return true;
    const lateral = parts.lateral?.hose;
    return laterals > 0 && lateral !== undefined && lowest(lateral.hose, (depth * laterals) / (laterals + 1));
  }

  /** The edge between a length that fails and one that serves, on the side that serves. */
  private edge(fails: number, serves: number, grade: number, laterals: number): number {
    let [bad, good] = [fails, serves];
    while (Math.abs(good - bad) > LENGTH_FOUND) {
      const middle = (bad + good) / 2;
      if (this.outcome(middle, grade, laterals) === 'serves') good = middle;
      else bad = middle;
    }
    return good;
  }

  private solve(length: number, grade: number, laterals: number, state: 'open' | 'shut'): OperatingPoint {
    const { layout } = this.rig;
    const outlet = layout.lay[0]?.outlet ?? layout.engine.outlets[0]?.name ?? 'outlet';
    const steps = laid(this.parts, length, grade, laterals);
    const assembly = this.rig
      .with({ ...layout, lay: [{ outlet, steps }] })
      .assemble({ staging: this.staging, lay: 'whole', nozzleState: () => state });
    return new SolvedAssembly(assembly).solve();
  }
}

/** Height that a trunk gains over its length, m. */
const riseOf = (length: number, grade: number): number => (length * grade) / Math.hypot(1, grade);

function cellOf(laterals: number, length: number, grade: number, limit: ReachCell['limit']): ReachCell {
  return { laterals, length, height: riseOf(length, grade), limit };
}

function leastMargin(point: OperatingPoint): number {
  return Math.min(
    ...point.assembly.nozzles.map((nozzle) => {
      return point.totalPressure(nozzle.inlet) - (needOf(nozzle)?.pressure ?? 0);
    }),
  );
}

/** A trunk at one grade, with so many laterals parting from it at even distances. */
function laid(
  { hose, nozzle, branch, lateral }: Parts,
  length: number,
  grade: number,
  laterals: number,
): Step[] {
  const section = length / (laterals + 1);
  const rise = (section * grade) / Math.hypot(1, grade);
  const steps: Step[] = [];
  for (let n = 1; n <= laterals + 1; n++) {
    const label = `trunk ${n}`;
    steps.push({ ...hose, name: label, label, length: section, rise, riseBasis: 'grade', ground: undefined });
    if (n > laterals || !branch || !lateral) continue;
    const line = { ...branch.to[0], name: `lateral ${n}`, steps: named(lateral.steps, n) };
    steps.push({ ...branch, label: `wye ${n}`, to: [line] });
  }
  steps.push({ ...nozzle, label: 'far nozzle', state: 'open' });
  return steps;
}

function named(steps: readonly Step[], n: number): Step[] {
  return steps.map((step) => ({ ...step, label: `${step.kind} of lateral ${n}` }));
}

/** The hose, nozzle and lateral of the layout's first lay, or those that are asked for. */
function partsOf(layout: Layout, options: ReachOptions): Parts {
  const steps = layout.lay[0]?.steps ?? [];
  const branch = steps.find((step) => step.kind === 'branch');
  const lateral = branch && lateralOf(branch);
  const far = steps.findLast((step) => step.kind === 'nozzle') ?? lateral?.nozzle;
  const firstHose = steps
    .flatMap((step) => (step.kind === 'siamese' ? step.siamese[0] : [step]))
    .find((step) => step.kind === 'hose');
  const at = layout.engine.pumps.a.at;
  const placed = { path: ['lay'], at };
  const hose: HoseStep | undefined = options.hose
    ? {
        ...(firstHose ?? {
          ...placed,
          label: 'trunk',
          length: 100 * FOOT,
          rise: 0,
          riseBasis: 'level',
          lines: 1,
        }),
        kind: 'hose',
        ...options.hose,
      }
    : firstHose;
  const nozzle: NozzleStep | undefined = options.nozzle
    ? { ...placed, kind: 'nozzle', label: 'far nozzle', state: 'open', ...options.nozzle }
    : far;
  if (hose === undefined)
    throw new NothingToReach(
      'the lay of the layout has no hose: name one with --hose, for instance forestry-1.5',
    );
  if (nozzle === undefined)
    throw new NothingToReach(
      'the lay of the layout has no nozzle: name one with --nozzle, for instance fog-20',
    );
  return { hose, nozzle, branch, lateral };
}

/** A lateral without branches of its own, up to the nozzle that it ends in. */
function lateralOf(branch: BranchStep): Parts['lateral'] {
  const { steps } = branch.to[0];
  const last = steps.at(-1);
  if (last?.kind !== 'nozzle' || steps.some((step) => step.kind === 'branch' || step.kind === 'tank'))
    return undefined;
  const level = steps.map((step): Step => {
    return step.kind === 'hose' ? { ...step, rise: 0, riseBasis: 'level', ground: undefined } : step;
  });
  const hose = steps.find((step) => step.kind === 'hose');
  return { steps: level, hose, nozzle: last };
}

function lateralAnswer({ lateral }: Parts, point: OperatingPoint): ReachAnswer['lateral'] {
  if (!lateral?.hose) return undefined;
  const nozzle = point.assembly.nozzles[0];
  const asked = needOf({ ...nozzle, model: lateral.nozzle.nozzle, step: lateral.nozzle });
  return {
    hose: lateral.hose.modelName,
    length: lateral.hose.length,
    nozzle: lateral.nozzle.modelName,
    pressure: asked?.pressure ?? 0,
  };
}

function carriedOf(layout: Layout, { id }: HoseStep): number | undefined {
  const { hose_carried } = layout.engine;
  if (hose_carried === undefined || id === undefined) return undefined;
  return hose_carried.reduce((sum, one) => sum + (one.id === id ? one.length : 0), 0);
}
