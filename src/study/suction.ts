import type { AssembledPump, StagingName } from '../assembly/assembly.js';
import { siteOf } from '../assembly/site.js';
import { STANDSTILL } from '../assembly/standstill.js';
import { npshAvailable } from '../assembly/suction-head.js';
import type { Layout, TypingAsked } from '../layout/layout.js';
import { type SuctionBasis, suctionMargin, suctionNeed, sureSuctionMargin } from '../limits/suction-need.js';
import { FOOT } from '../physics/customary.js';
import { attainableLift, theoreticalLift } from '../physics/npsh.js';
import type { Verdict } from './answer.js';
import { tankDepth, under } from './conditions.js';
import { type Delivery, deliveries } from './delivery.js';
import { closeInBySquares } from './falling-root.js';
import { ifSteady } from './if-steady.js';
import { type Ruling, ruleOn } from './judge.js';
import { type Refusal, refusalOf } from './refusal.js';
import type { Rig } from './rig.js';
import type { StagingJudged } from './staging.js';

/** Part of the tank that is left when four fifths are drawn. NFPA 1901, tank-to-pump (from memory). */
const DRAWN_DOWN = 0.2;
/** Lift that typings ask to be primed and pumped from. NWCG engine typing page, notes to the table. */
const TYPING_LIFT = 10 * FOOT;
/** Flows are found to this, m3/s, or once the suction head is this near, m. */
const FLOW_FOUND = 1e-7;
const HEAD_FOUND = 0.002;

export interface PumpSuction {
  pump: string;
  /** Net positive suction head there is and is needed, m, at the required flow. */
  available: number;
  needed: number;
  basis: SuctionBasis;
  /** Below the air, as the intake gauge reads it, Pa; below 0 where the inlet stands above the air. */
  vacuum: number;
  /** Flow drawn at the outlet from which it cavitates, m3/s; undefined where it does not as far as the curves are known. */
  cavitatesFrom?: number;
}

/** The line from tank to pump at one level of the tank. */
export interface TankLevel {
  level: number;
  verdict: Verdict;
  /** The pump with the least suction head to spare at the required flow, and how much, m; none behind a refusal. */
  pump?: string;
  margin?: number;
  vacuum?: number;
  refusal?: Refusal;
}

/** What can be drawn from the lift that a typing asks for. */
export interface LiftRow {
  staging: StagingName;
  /** Most that can be drawn before a pump cavitates or leaves its curve, m3/s. */
  most: number;
  limit: 'cavitates' | 'end_of_curve';
  pump: string;
  basis: SuctionBasis;
  /** Highest vacuum of a pump while that is drawn, Pa; undefined where even that cannot be. */
  vacuum?: number;
}

export interface SuctionAnswer {
  pumps: PumpSuction[];
  tank: TankLevel[];
  lift?: {
    lift: number;
    /** What a pump in good order attains at this height by the two-thirds rule, m. */
    attainable: number;
    /** Whether the layout describes the suction hose; else height and the engine's own plumbing alone are counted. */
    hoseStated: boolean;
    rows: LiftRow[];
  };
}

/** Net positive suction head at each pump, as laid out, as the tank empties, and from the lift that the typing asks for. */
export function suctionOf(rig: Rig, typing: TypingAsked, judged: StagingJudged): SuctionAnswer {
  const { delivery, shown } = judged;
  const onsets = cavitationOnsets(delivery);
  const state = shown?.state;
  const own = state?.assembly.pumps.filter((pump) => !pump.booster) ?? [];
  return {
    pumps: own.flatMap((pump) => {
      if (state === undefined) return [];
      const need = suctionNeed(state, pump);
      return {
        pump: pump.name,
        available: npshAvailable(state, pump),
        needed: need.head,
        basis: need.basis,
        vacuum: -state.gaugePressure(pump.inlet),
        cavitatesFrom: onsets.get(pump.name),
      };
    }),
    tank: tankLevels(rig, typing, judged),
    lift: fromLift(rig, typing),
  };
}

/** Where each pump starts to cavitate, by the flow drawn at an end; none for one that its curve ends before. */
function cavitationOnsets(delivery: Delivery): Map<string, number> {
  const end = delivery.endOfCurves().flow;
  const found = new Map<string, number>();
  for (const pump of delivery.assembly.pumps) {
    if (pump.booster) continue;
    const onset = onsetOf(delivery, end, [pump]);
    if (onset !== undefined) found.set(pump.name, onset.flow);
  }
  return found;
}

/** The flow from which the first of some pumps cavitates, and which it is; undefined where none does up to `end`. */
function onsetOf(
  delivery: Delivery,
  end: number,
  pumps: readonly AssembledPump[],
): { flow: number; pump: AssembledPump } | undefined {
  const at = (flow: number) => {
    const state = delivery.at(flow);
    const margins = pumps.map((pump) => sureSuctionMargin(state, pump));
    const least = Math.min(...margins);
    const parts = refusalOf(state)?.code === 'water_parts';
    // Water that parts on its way reaches no pump, whatever head the pumps have left.
    return { value: parts ? Math.min(least, -HEAD_FOUND) : least, pump: pumps[margins.indexOf(least)] };
  };
  const atEnd = at(end);
  if (atEnd.value >= 0) return undefined;
  const atRest = at(0);
  if (atRest.value < 0) return { flow: 0, pump: atRest.pump };
  const bracket = { low: 0, atLow: atRest, high: end, atHigh: atEnd };
  const { low, atHigh } = closeInBySquares(at, bracket, FLOW_FOUND, ({ value }) => value < HEAD_FOUND);
  return { flow: low, pump: atHigh.pump };
}

function tankLevels(rig: Rig, typing: TypingAsked, full: Ruling): TankLevel[] {
  const { layout } = rig;
  if (layout.supply.kind !== 'tank' || layout.engine.tank === undefined) return [];
  // A surface that does not fall leaves everything as it is.
  const drawn =
    tankDepth(layout.engine.tank) === 0
      ? full
      : ruleOn(rig.with(under(layout, { tankLevel: DRAWN_DOWN })), typing, layout.staging);
  return [
    { level: 1, ruling: full },
    { level: DRAWN_DOWN, ruling: drawn },
  ].map(({ level, ruling }) => ({ level, verdict: ruling.verdict, ...tightest(ruling) }));
}

/** The pump with the least suction head to spare at the required flow; behind the gate, why no figure is told. */
function tightest({ worst: { state, refusal } }: Ruling): Omit<TankLevel, 'level' | 'verdict'> {
  // What a pump is short of may be told; nothing else of a state that cannot be.
  if (state === undefined || (refusal && refusal.code !== 'suction_short')) return { refusal };
  const own = state.assembly.pumps.filter((pump) => !pump.booster && state.flow(pump.link) > STANDSTILL);
  if (own.length === 0) return {};
  const pump = own.reduce((kept, one) =>
    suctionMargin(state, one) < suctionMargin(state, kept) ? one : kept,
  );
  return {
    pump: pump.name,
    margin: suctionMargin(state, pump),
    vacuum: refusal ? undefined : -state.gaugePressure(pump.inlet),
    refusal,
  };
}

/** Whether the typing asks that the engine primes and pumps from a lift. */
function asksForLift({ requirement }: TypingAsked): boolean {
  return requirement.not_checked?.some(({ item }) => item === 'draft') ?? false;
}

function fromLift(rig: Rig, typing: TypingAsked): SuctionAnswer['lift'] {
  if (!asksForLift(typing)) return undefined;
  const { layout } = rig;
  const draft = layout.supply.kind === 'draft' ? layout.supply : undefined;
  const lifted: Layout = {
    ...layout,
    supply: {
      kind: 'draft',
      lift: TYPING_LIFT,
      suction: draft?.suction ?? [],
      ...(draft?.strainer && { strainer: draft.strainer }),
    },
  };
  const there = rig.with(lifted);
  const both: StagingName[] = layout.engine.pumps.b ? ['parallel', 'a', 'b'] : ['a'];
  const rows = both.flatMap((staging) => ifSteady(() => liftRow(there, staging)) ?? []);
  const { atmosphericPressure, waterDensity } = siteOf(layout.site);
  return {
    lift: TYPING_LIFT,
    attainable: attainableLift(theoreticalLift(atmosphericPressure, waterDensity)),
    hoseStated: (draft?.suction.length ?? 0) > 0,
    rows,
  };
}

function liftRow(there: Rig, staging: StagingName): LiftRow {
  const [delivery] = deliveries(there, staging);
  const own = delivery.assembly.pumps.filter((pump) => !pump.booster);
  const end = delivery.endOfCurves();
  const onset = onsetOf(delivery, end.flow, own);
  const most = onset?.flow ?? end.flow;
  const state = delivery.at(most);
  const boils = own.some((one) => npshAvailable(state, one) <= 0);
  const pump = onset?.pump ?? end.pump;
  return {
    staging,
    most,
    limit: onset ? 'cavitates' : 'end_of_curve',
    pump: pump.name,
    basis: suctionNeed(state, pump).basis,
    vacuum: boils ? undefined : Math.max(...own.map((one) => -state.gaugePressure(one.inlet))),
  };
}
