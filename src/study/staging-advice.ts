import type { AssembledPump, StagingName } from '../assembly/assembly.js';
import { delivered } from '../assembly/delivered.js';
import type { OperatingPoint } from '../assembly/operating-point.js';
import { STANDSTILL } from '../assembly/standstill.js';
import { boilingPressure } from '../limits/impossible.js';
import { overPumpLimit } from '../limits/pump-limit.js';
import { sureSuctionMargin } from '../limits/suction-need.js';
import type { PumpShare, Statement, Verdict } from './answer.js';
import type { Delivery } from './delivery.js';
import { closeIn, closeInBySquares } from './falling-root.js';
import { ifSteady } from './if-steady.js';
import { refusalOf } from './refusal.js';
import { type Rig, SolvedAssembly } from './rig.js';
import { pumpShares, type StagingJudged } from './staging.js';

/** Throttles are found to this part of rated speed, or once the shares lie this near. */
const THROTTLE_FOUND = 1e-5;
const SHARE_FOUND = 1e-4;
/** Shares that lie this near are alike. Common practice, no source. */
const ALIKE = 0.02;
/** Flows are found to this, m3/s, or once the suction head is this near, m. */
const FLOW_FOUND = 1e-7;
const HEAD_FOUND = 0.002;
/** What holds a check valve shut is found to this, Pa. */
const SHUT_FOUND = 50;
/** The flow at which it opens is found to this, m3/s. */
const SHUT_FLOW_FOUND = 1e-5;
/** Least throttle that is advised; below it one pump alone is the better advice. Common practice, no source. */
const LEAST_THROTTLE = 0.5;

export interface StagingAdvice {
  /** The staging that suits, and whether it meets what is asked. */
  best: StagingName;
  verdict: Verdict;
  reason: Statement;
  parallel?: ParallelFacts;
  series: SeriesFacts[];
}

export interface ParallelFacts {
  /** At the required flow, or where the curves end. */
  shares: PumpShare[];
  weaker: string;
  /** Pressure at the outlet from which the weaker pump moves no water, Pa. */
  shutOutFrom?: number;
  /** Whether the stronger pump shuts it out with nothing drawn. */
  shutOutAtRest: boolean;
  /** Part of rated speed of the stronger pump at which both move alike; undefined where they do, or none does. */
  balance?: { pump: string; throttle: number; pressure: number };
  drooping: string[];
}

/** One pump feeding the other. */
export interface SeriesFacts {
  staging: StagingName;
  first: string;
  second: string;
  /** At the second pump's inlet, Pa, while the most flows that the curves allow, up to the required flow. */
  flow: number;
  between: number;
  betweenLimit?: number;
  /** Most that the second pump can draw through the first one standing still before it cavitates, m3/s. */
  firstStops?: { most: number };
}

/** Which staging suits a layout, from what each of them was found to do, and how it is run safely. */
export function adviseStaging(
  rig: Rig,
  judged: readonly StagingJudged[],
  required: { flow: number; pressure: number },
): StagingAdvice | undefined {
  const of = (staging: StagingName) => judged.find((one) => one.staging === staging);
  const parallel = of('parallel');
  if (parallel === undefined) return undefined;
  const candidates = judged.filter(({ staging }) => staging !== 'separate');
  const best = candidates.reduce((kept, one) => (rank(one) > rank(kept) ? one : kept));
  return {
    best: best.staging,
    verdict: best.verdict,
    reason: reasonFor(best, candidates),
    parallel: parallelFacts(rig, parallel, judged, required.flow),
    series: (['series', 'series_reversed'] as const).flatMap((staging) => {
      const one = of(staging);
      return one ? seriesFacts(rig, one) : [];
    }),
  };
}

/** Whether a casing or an inlet goes over its limit with the outlets shut. */
export function overLimit({ shutoffState }: StagingJudged): AssembledPump | undefined {
  return shutoffState.assembly.pumps.find((pump) => overPumpLimit(shutoffState, pump));
}

/** What meets comes first, then what stays within its limits, then the larger margin; one pump at work last among likes. */
function rank(one: StagingJudged): number {
  const { verdict, atRequiredFlow, atRequiredPressure } = one;
  const { point } = one.worst;
  const margin = atRequiredFlow
    ? atRequiredFlow.margin / point.pressure
    : (atRequiredPressure?.margin ?? -point.flow) / point.flow - 2;
  return (verdict === 'meets' ? 100 : 0) + (overLimit(one) ? 0 : 10) + Math.max(-5, Math.min(5, margin));
}

function reasonFor(best: StagingJudged, all: readonly StagingJudged[]): Statement {
  const { staging, verdict, atRequiredFlow, atRequiredPressure } = best;
  const { point } = best.worst;
  const pressure = (value: number) => ({ value, dimension: 'pressure' as const });
  const flow = (value: number) => ({ value, dimension: 'flow' as const });
  if (verdict === 'meets' && atRequiredFlow) {
    const others = all.filter((one) => one !== best && one.verdict === 'meets').length;
    const limited = all.find((one) => one !== best && one.verdict === 'meets' && overLimit(one));
    const alone = staging === 'a' || staging === 'b' ? ', and leaves the other pump in hand' : '';
    const rest = limited
      ? '; another that makes it goes over a limit of its pumps when shut off'
      : others > 0
        ? `, the most of the ${others + 1} stagings that make it`
        : '; no other staging makes it';
    return {
      template: `It gives {pressure} at {flow}, {margin} over what is asked${rest}${alone}`,
      values: {
        pressure: pressure(atRequiredFlow.pressure),
        flow: flow(point.flow),
        margin: pressure(atRequiredFlow.margin),
      },
    };
  }
  if (atRequiredPressure) {
    return {
      template: 'None makes it; this one comes nearest, with {flow} at {pressure}',
      values: { flow: flow(atRequiredPressure.flow), pressure: pressure(point.pressure) },
    };
  }
  return {
    template: 'None makes it, nor reaches {pressure} at any flow',
    values: { pressure: pressure(point.pressure) },
  };
}

function ownPumps(state: OperatingPoint): AssembledPump[] {
  return state.assembly.pumps.filter((pump) => !pump.booster);
}

function parallelFacts(
  rig: Rig,
  parallel: StagingJudged,
  judged: readonly StagingJudged[],
  required: number,
): ParallelFacts | undefined {
  const alone = (['a', 'b'] as const).map((name) => ({
    name,
    shutoff: judged.find(({ staging }) => staging === name)?.shutoff ?? Number.NaN,
  }));
  const weaker = alone[0].shutoff <= alone[1].shutoff ? alone[0] : alone[1];
  if (!Number.isFinite(weaker.shutoff)) return undefined;
  const { shown } = parallel;
  if (shown === undefined) return undefined;
  const { state } = shown;
  return {
    shares: pumpShares(state).map(({ pump, ...share }) => ({ pump: `pump ${pump}`, ...share })),
    weaker: `pump ${weaker.name}`,
    ...shutOut(parallel.delivery, `pump ${weaker.name}`),
    balance: parallel.worst.refusal ? undefined : ifSteady(() => balance(rig, parallel, required)),
    drooping: ownPumps(state)
      .filter((pump) => pump.curve.droops())
      .map(({ name }) => name),
  };
}

/**
 * Whether the weaker pump gives nothing with nothing drawn, and the pressure at the outlet from which it gives nothing, Pa: the
 * discharges stand at what it reaches at most then, and the outlet lower by what the manifold takes of the other's flow. No
 * pressure where nothing shuts it out, or where it gives nothing as far as the curves go.
 */
function shutOut(delivery: Delivery, weaker: string): Pick<ParallelFacts, 'shutOutFrom' | 'shutOutAtRest'> {
  const held = (state: OperatingPoint) => {
    const pump = state.assembly.pumps.find(({ name }) => name === weaker);
    if (pump === undefined) return -1;
    const given = delivered(state, pump);
    // The valve of a pump that is held shut loses less than nothing.
    return pump.checkValve && given <= STANDSTILL
      ? -state.lossOf(pump.checkValve) / SHUT_FOUND
      : -given / STANDSTILL;
  };
  const at = (flow: number) => {
    const state = flow === 0 ? delivery.atRest() : delivery.at(flow);
    return { value: held(state), state };
  };
  const atLow = at(0);
  if (atLow.value < 1) return { shutOutAtRest: false };
  const high = delivery.endOfCurves().flow;
  const atHigh = at(high);
  if (atHigh.value >= 0) return { shutOutAtRest: true };
  const bracket = { low: 0, atLow, high, atHigh };
  const end = closeInBySquares(at, bracket, SHUT_FLOW_FOUND, ({ value }) => value < 1);
  const pressure = delivery.pressure(end.atLow.state, end.low, false);
  // At an outlet so high that no water stands there, there is no pressure to tell.
  const stands = pressure > boilingPressure(end.atLow.state) && refusalOf(end.atLow.state) === undefined;
  return { shutOutAtRest: true, shutOutFrom: stands ? pressure : undefined };
}

/** Turns the stronger pump down until both move alike at the required flow. */
function balance(rig: Rig, { worst, delivery }: StagingJudged, required: number): ParallelFacts['balance'] {
  const solved = new SolvedAssembly(rig.assemble({ staging: 'parallel', lay: 'none' }));
  const { state } = worst;
  const end = solved.assembly.ends.find(({ name }) => name === delivery.end.name);
  if (end === undefined || state === undefined) return undefined;
  solved.setDemand(end.place.node, required);
  const first = solved.solve();
  const pumps = ownPumps(first);
  const busier = pumps.reduce((kept, pump) => (first.flow(pump.link) > first.flow(kept.link) ? pump : kept));
  const other = pumps.find((pump) => pump !== busier);
  if (other === undefined) return undefined;
  const uneven = (point: OperatingPoint) => (point.flow(busier.link) - point.flow(other.link)) / required;
  if (uneven(first) < ALIKE) return undefined;
  const setting = busier.speed;
  const at = (down: number) => {
    busier.speed = setting * (1 - down);
    solved.setSpeed(busier.link, busier.speed);
    const point = solved.solve();
    return { value: uneven(point), point };
  };
  const high = 1 - LEAST_THROTTLE;
  const atHigh = at(high);
  if (atHigh.value >= 0) return undefined;
  const { low } = closeIn(
    at,
    { low: 0, atLow: { value: uneven(first), point: first }, high, atHigh },
    THROTTLE_FOUND,
    ({ value }) => value < SHARE_FOUND,
  );
  const { point } = at(low);
  if (refusalOf(point) || point.gaugePressure(end.place) <= boilingPressure(point)) return undefined;
  return { pump: busier.name, throttle: busier.speed, pressure: point.gaugePressure(end.place) };
}

function seriesFacts(rig: Rig, judged: StagingJudged): SeriesFacts[] {
  const { staging, shown } = judged;
  if (shown === undefined) return [];
  const { state, flow } = shown;
  const [first, second] = ownPumps(state);
  return [
    {
      staging,
      first: first.name,
      second: second.name,
      flow,
      between: state.totalPressure(second.inlet),
      betweenLimit: second.model.limits?.inlet,
      firstStops: ifSteady(() => firstStops(rig, judged, first.name === 'pump a' ? 'a' : 'b', flow)),
    },
  ];
}

/** The second pump drawing by itself through the first one, which stands still. */
function firstStops(
  rig: Rig,
  { staging, delivery }: StagingJudged,
  pump: 'a' | 'b',
  flow: number,
): SeriesFacts['firstStops'] {
  const solved = new SolvedAssembly(
    rig.assemble({ staging, lay: 'none', stopped: { pump, check: 'works' } }),
  );
  const end = solved.assembly.ends.find(({ name }) => name === delivery.end.name);
  if (end === undefined) return undefined;
  const at = (drawn: number) => {
    solved.setDemand(end.place.node, drawn);
    const point = solved.solve();
    return { value: sureSuctionMargin(point, ownPumps(point)[0]) };
  };
  const atRest = at(0);
  if (atRest.value < 0) return { most: 0 };
  const atFlow = at(flow);
  if (atFlow.value >= 0) return { most: flow };
  const bracket = { low: 0, atLow: atRest, high: flow, atHigh: atFlow };
  return { most: closeInBySquares(at, bracket, FLOW_FOUND, ({ value }) => value < HEAD_FOUND).low };
}
