import type { AssembleOptions } from '../assembly/assemble.js';
import type { AssembledNozzle, Assembly, StagingName } from '../assembly/assembly.js';
import { flowAtPressure, needOf } from '../assembly/nozzle-needs.js';
import type { OperatingPoint } from '../assembly/operating-point.js';
import type { Caution } from '../caution/caution.js';
import type { HazardCase } from '../caution/hazard.js';
import type { Layout } from '../layout/layout.js';
import { type Impossibility, whyImpossible } from '../limits/impossible.js';
import { alwaysRun, totalFlow } from './always-run.js';
import { assumptions } from './assumptions.js';
import { gatedCautions } from './gated.js';
import { Throttled } from './governor.js';
import { highestHose } from './ground-line.js';
import { Notebook } from './hand-rules.js';
import { mapLay } from './map-steps.js';
import { LayPaths } from './paths.js';
import type {
  NozzleNeed,
  NozzleShort,
  OutletDemand,
  RequireAnswer,
  Servable,
  StagingDemand,
} from './require-answer.js';
import { Rig } from './rig.js';
import { largestServed } from './servable.js';
import { solverReport } from './solver-report.js';
import { pumpShares } from './staging.js';
import { portableTanks } from './supply.js';
import { tankClockIfSteady } from './tank-clock.js';
import { leastThrottle, type ThrottleFound } from './throttle-search.js';

/** Stagings that are searched; pumps apart only where the layout has them so. */
const SEARCHED: readonly StagingName[] = ['parallel', 'series', 'series_reversed', 'a', 'b'];

/** Governed speed. */
const FULL = 1;

/** What the lay takes is found with a pump turned this much faster than it can, if need be. */
const BEYOND = 4;

/** Raised where no open nozzle asks for a pressure. */
export class NothingRequired extends Error {
  override name = 'NothingRequired';
}

export interface RequireOptions {
  nozzleState?: AssembleOptions['nozzleState'];
}

interface Searched {
  demand: StagingDemand;
  state: OperatingPoint;
  cautions: Caution[];
}

/**
 * For each open nozzle to have the pressure that it is laid for, what must the pumps discharge, at what throttle and in
 * which staging, and can they? Where they cannot: by how much, at which nozzle, and which nozzles they can serve. The throttle
 * is the least at which every need is met and the whole state can be; a state that cannot be serves nothing.
 *
 * Both pumps run at one throttle, up to governed speed, whatever throttle the layout states. Throws NothingRequired where
 * no open nozzle asks for a pressure, NoSteadyAnswer where the network has no answer.
 */
export async function requireOf(layout: Layout, options: RequireOptions = {}): Promise<RequireAnswer> {
  const rig = (await Rig.of(layout)).with({ ...layout, throttle: { by: 'speed', a: FULL, b: FULL } });
  const { nozzleState } = options;
  const asked = SEARCHED.includes(layout.staging) ? SEARCHED : [layout.staging, ...SEARCHED];
  const searched = asked.filter((one) => rig.can(one)).map((one) => search(rig, one, nozzleState));
  const chosen = searched.reduce((kept, one) => (better(one, kept, layout.staging) ? one : kept));
  const { state, demand } = chosen;
  const notebook = notebookOf(rig, demand.staging, nozzleState);
  const outlets = demandAtOutlets(rig, demand.staging, nozzleState);
  return {
    question: 'require',
    title: layout.title,
    engine: layout.engine.name,
    site: state.assembly.site,
    verdict: demand.verdict,
    staging: demand.staging,
    asLaid: layout.staging,
    needs: asking(state.assembly).map((nozzle) => needAnswer(nozzle, state.assembly)),
    outlets: outlets.demands,
    outletsImpossible: outlets.impossible,
    stagings: searched.map((one) => one.demand),
    servable: demand.verdict === 'meets' ? undefined : servable(rig, searched, nozzleState),
    rules: notebook.byRules(),
    rulesOmitted: notebook.omitted,
    habits: demand.impossible ? [] : notebook.habits(),
    cautions: chosen.cautions,
    assumptions: [
      {
        template:
          'Each nozzle is asked for at least its pressure; those nearer the pump then get more, and pass more than their rating',
      },
      { template: 'The throttle is searched up to governed speed, the same for both pumps' },
      ...assumptions(rig.layout, state.assembly.site),
    ],
    solver: solverReport(state),
  };
}

/** Of a lay in which every appliance costs something, so that none is missing from the count. */
function notebookOf(rig: Rig, staging: StagingName, nozzleState: AssembleOptions['nozzleState']): Notebook {
  const counted = mapLay(rig.layout, (step) =>
    step.kind === 'appliance' || step.kind === 'branch' ? { ...step, policy: 'wildland' } : step,
  );
  return new Notebook(new Throttled(rig.with(counted), staging, nozzleState).at(FULL));
}

/** Open nozzles that ask for a pressure. */
function asking(assembly: Assembly): AssembledNozzle[] {
  const nozzles = assembly.nozzles.filter(
    (nozzle) => nozzle.state === 'open' && needOf(nozzle) !== undefined,
  );
  if (nozzles.length === 0)
    throw new NothingRequired(
      'no open nozzle of the lay asks for a pressure: open one with --open, or end a line in a nozzle',
    );
  return nozzles;
}

function needAnswer(nozzle: AssembledNozzle, assembly: Assembly): NozzleNeed {
  const { pressure, source } = needOf(nozzle) as { pressure: number; source: string };
  const flow = flowAtPressure(nozzle, pressure, assembly.site);
  return { name: nozzle.name, kind: nozzle.modelName, pressure, flow, source };
}

function marginsOf(point: OperatingPoint): NozzleShort[] {
  return asking(point.assembly).map((nozzle) => {
    const required = needOf(nozzle)?.pressure ?? 0;
    const pressure = point.totalPressure(nozzle.inlet);
    return { name: nozzle.name, pressure, required, margin: pressure - required };
  });
}

const worstFirst = (point: OperatingPoint): string[] =>
  marginsOf(point)
    .sort((a, b) => a.margin - b.margin)
    .map(({ name }) => name);

/** The nozzle with the least margin. */
function worstOf(point: OperatingPoint): NozzleShort {
  const margins = marginsOf(point);
  return margins.reduce((kept, one) => (one.margin < kept.margin ? one : kept));
}

/** Less than this is level, m3/s (0.01 gpm). */
const EVEN = 6e-7;

/** An open tank of the line that is drawn faster than it fills: what it feeds is not served for long. */
function losingTank(point: OperatingPoint): { name: string; by: number } | undefined {
  const losing = portableTanks(point)
    .map(({ name, inflow, outflow }) => ({ name, by: outflow - inflow }))
    .filter(({ by }) => by > EVEN);
  return losing.length === 0 ? undefined : losing.reduce((kept, one) => (one.by > kept.by ? one : kept));
}

const serves = (point: OperatingPoint): boolean =>
  worstOf(point).margin >= 0 && losingTank(point) === undefined;

/** The least throttle of a staging that serves every nozzle in a state that can be. */
function find(throttled: Throttled, most: number): ThrottleFound {
  return leastThrottle({ at: (speed) => throttled.at(speed), serves, most });
}

function search(rig: Rig, staging: StagingName, nozzleState: AssembleOptions['nozzleState']): Searched {
  const throttled = new Throttled(rig, staging, nozzleState);
  const found = find(throttled, FULL);
  const state = throttled.at(found.speed ?? FULL);
  const impossible = found.speed === undefined ? (whyImpossible(state) ?? found.why) : undefined;
  const { assembly } = state;
  const own = throttled.own;
  const shares = pumpShares(state);
  const cases: HazardCase[] = [
    { kind: 'laid', when: 'at that throttle', point: state },
    ...alwaysRun(rig, state, nozzleState),
  ];
  const cautions = gatedCautions({
    layout: rig.layout,
    cases,
    tank: tankClockIfSteady(rig.layout, state),
  });
  return {
    state,
    cautions,
    demand: {
      staging,
      verdict: found.speed === undefined ? 'falls_short' : 'meets',
      impossible,
      throttle: own[0]?.speed ?? FULL,
      pumps: assembly.pumps.map((pump) => ({
        name: pump.name,
        flow: state.flow(pump.link),
        dischargePressure: state.gaugePressure(pump.discharge),
        inletPressure: state.gaugePressure(pump.inlet),
        share: shares.find(({ pump: name }) => `pump ${name}` === pump.name)?.share ?? 1,
        offCurve: state.isOffCurve(pump),
      })),
      totalFlow: totalFlow(state),
      worst: worstOf(state),
      losing: losingTank(state),
      highestHose: highestHose(state),
      stops: cautions.filter(({ level }) => level === 'stop').length,
    },
  };
}

/** Serving all comes first, then fewest dangers, then the staging that is laid, then the lower hose pressure; else least short. */
function better({ demand: one }: Searched, { demand: kept }: Searched, laid: StagingName): boolean {
  if (one.verdict !== kept.verdict) return one.verdict === 'meets';
  // How short a state that cannot be would fall says nothing.
  if ((one.impossible === undefined) !== (kept.impossible === undefined)) return one.impossible === undefined;
  if (one.impossible) return one.staging === laid;
  if (one.verdict === 'falls_short') return one.worst.margin > kept.worst.margin;
  if (one.stops !== kept.stops) return one.stops < kept.stops;
  if (kept.staging === laid) return false;
  if (one.staging === laid) return true;
  return (one.highestHose?.pressure ?? 0) < (kept.highestHose?.pressure ?? 0);
}

/** What the lay takes where the engine's plumbing ends: found with pumps turned as fast as it needs, which no longer matter there. */
function demandAtOutlets(
  rig: Rig,
  staging: StagingName,
  nozzleState: AssembleOptions['nozzleState'],
): { demands?: OutletDemand[]; impossible?: Impossibility } {
  // Its relief valve would spill what it takes to serve the lay.
  const { layout } = rig;
  const unrelieved = rig.with({ ...layout, engine: { ...layout.engine, relief: undefined } });
  const throttled = new Throttled(unrelieved, staging, nozzleState);
  const found = find(throttled, BEYOND);
  if (found.speed === undefined) return { impossible: found.why };
  const state = throttled.at(found.speed);
  const paths = new LayPaths(state.assembly);
  const used = new Set(state.assembly.nozzles.map((nozzle) => paths.outletOf(nozzle)));
  const demands = state.assembly.outlets
    .filter(({ name }) => used.has(name))
    .map(({ name, place }) => ({
      name,
      flow: state.assembly.network.links.reduce(
        (sum, link, index) => sum + (link.from === place.node ? state.flow(index) : 0),
        0,
      ),
      pressure: state.gaugePressure(place),
    }));
  return { demands };
}

/**
 * The largest set over all stagings, at governed speed where the state can be there, else at the least throttle that serves it;
 * among equals the staging that is least short of serving all.
 */
function servable(
  rig: Rig,
  searched: readonly Searched[],
  nozzleState: AssembleOptions['nozzleState'],
): Servable {
  const ranked = [...searched].sort((a, b) => b.demand.worst.margin - a.demand.worst.margin);
  const found = ranked.map(({ demand: { staging }, state }): Servable => {
    const nozzles = asking(state.assembly).map((nozzle) => ({
      name: nozzle.name,
      flow: nozzle.link === undefined ? 0 : state.flow(nozzle.link),
    }));
    const tried = (open: ReadonlySet<string>): { throttle?: number; order: string[] } => {
      const states = (name: string, stated: 'open' | 'shut') => {
        const own = nozzleState?.(name, stated) ?? stated;
        return own === 'open' && (open.has(name) || !nozzles.some((one) => one.name === name))
          ? 'open'
          : 'shut';
      };
      const throttled = new Throttled(rig, staging, states);
      const point = throttled.at(FULL);
      const order = worstFirst(point);
      if (!serves(point)) return { order };
      return { order, throttle: whyImpossible(point) ? find(throttled, FULL).speed : FULL };
    };
    const { served, exact } = largestServed(nozzles, (open) => {
      const { throttle, order } = tried(open);
      return { served: throttle !== undefined, order };
    });
    const leftOut = nozzles.map(({ name }) => name).filter((name) => !served.includes(name));
    const throttle = served.length === 0 ? FULL : (tried(new Set(served)).throttle ?? FULL);
    return { staging, served, leftOut, exact, throttle };
  });
  return found.reduce((kept, one) => (one.served.length > kept.served.length ? one : kept));
}
