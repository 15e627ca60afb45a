import type { StagingName } from '../assembly/assembly.js';
import { needOf } from '../assembly/nozzle-needs.js';
import type { OperatingPoint } from '../assembly/operating-point.js';
import { STAGING_PHRASES } from '../assembly/staging-words.js';
import { citation } from '../catalogue/citation.js';
import type { Hose } from '../catalogue/schema/hose.js';
import type { Nozzle } from '../catalogue/schema/nozzle.js';
import { cautionsOf } from '../caution/cautions.js';
import type { HazardCase } from '../caution/hazard.js';
import type { Layout } from '../layout/layout.js';
import type { BranchStep, HoseStep, NozzleStep, Step } from '../layout/step.js';
import { FOOT } from '../physics/customary.js';
import { pressureOfHeight } from '../physics/elevation.js';
import type { Statement } from './answer.js';
import { assumptions } from './assumptions.js';
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
  const stagings = trials.map((trial) => trial.answer(grades, counts));
  const own = trials.find(({ staging }) => staging === layout.staging) ?? trials[0];
  const first = ifSteady(() => own.at(parts.hose.length, 0, counts[0])) ?? own.shut;
  const cases = trials.map(({ staging, shut }): HazardCase => {
    return { kind: 'laid_shut', when: `with every nozzle shut, ${STAGING_PHRASES[staging]}`, point: shut };
  });
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
    cautions: cautionsOf({ layout, cases }),
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
    const { limits } = parts.hose.hose;
    const limit = limits?.service_test ?? limits?.working;
    return {
      staging: this.staging,
      shutPressure,
      overHose:
        limit !== undefined && shutPressure > limit
          ? { limit, source: citation(parts.hose.hose, 'limits') }
          : undefined,
      rows: grades.map((grade) => ({ grade, cells: laterals.map((count) => this.cell(grade, count)) })),
    };
  }

  /** A lay without a steady flow leaves its own cell empty, and no other. */
  private cell(grade: number, laterals: number): ReachCell {
    const none: ReachCell = { laterals, length: 0, height: 0, limit: 'no_steady_answer' };
    return ifSteady(() => this.reach(grade, laterals)) ?? none;
  }

  /** The longest trunk that still serves every nozzle: margins fall steadily with its length uphill and on the level. */
  private reach(grade: number, laterals: number): ReachCell {
    const cell = (length: number, limit: ReachCell['limit'] = 'nozzle'): ReachCell => ({
      laterals,
      length,
      height: (length * grade) / Math.hypot(1, grade),
      limit,
    });
    const margin = (length: number) => leastMargin(this.at(length, grade, laterals));
    let low = SHORTEST;
    let atLow = margin(low);
    if (atLow < 0) return cell(0);
    let high = 400 * FOOT;
    let atHigh = margin(high);
    while (atHigh >= 0) {
      if (high >= LONGEST) return cell(LONGEST, 'longest_looked_at');
      low = high;
      atLow = atHigh;
      high = Math.min(4 * high, LONGEST);
      atHigh = margin(high);
    }
    // Regula falsi, halving where it stalls.
    for (let tries = 0; high - low > LENGTH_FOUND; tries++) {
      const guess = low + (atLow * (high - low)) / (atLow - atHigh);
      const edge = 0.01 * (high - low);
      const length = tries % 3 === 2 ? (low + high) / 2 : Math.min(Math.max(guess, low + edge), high - edge);
      const at = margin(length);
      if (at >= 0) {
        low = length;
        atLow = at;
      } else {
        high = length;
        atHigh = at;
      }
    }
    return cell(low);
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
