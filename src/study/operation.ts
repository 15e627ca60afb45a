import type { AssembledNozzle } from '../assembly/assembly.js';
import { returns } from '../assembly/delivered.js';
import type { Element } from '../assembly/network-builder.js';
import type { OperatingPoint } from '../assembly/operating-point.js';
import { STANDSTILL } from '../assembly/standstill.js';
import { citation } from '../catalogue/citation.js';
import { boreOf } from '../catalogue/schema/nozzle.js';
import type { HazardCase } from '../caution/hazard.js';
import type { Layout } from '../layout/layout.js';
import { impossibilities, whyImpossible } from '../limits/impossible.js';
import { pressureOfHeight } from '../physics/elevation.js';
import { smoothBoreReach } from '../physics/nozzle/reach.js';
import { fogReaction, smoothBoreReaction } from '../physics/nozzle/reaction.js';
import { flowVelocity, velocityHead } from '../physics/velocity.js';
import { alwaysRun, caseAnswers, stuckShut, totalFlow } from './always-run.js';
import type { FlowAnswer, LineAnswer, NozzleAnswer } from './answer.js';
import { assumptions, backflow } from './assumptions.js';
import { axlesOf } from './axles.js';
import { gatedCautions } from './gated.js';
import { governed } from './governor.js';
import { endToEndHabits } from './habit.js';
import { heatOf } from './heat.js';
import { hoseWithoutLimit } from './hose-limits.js';
import { ledgerOf } from './ledger.js';
import { gaugePoints } from './losses.js';
import { lineControlOf } from './pressure-control.js';
import { profiles } from './profile.js';
import { pumpAnswer } from './pump-answer.js';
import { Rig } from './rig.js';
import { solverReport } from './solver-report.js';
import { portableTanks, supplyOf } from './supply.js';
import { tankClockIfSteady } from './tank-clock.js';

export interface OperateOptions {
  /** Whether a nozzle is open, whatever the layout says. */
  nozzleState?: (name: string, stated: 'open' | 'shut') => 'open' | 'shut';
  /** The always-run cases that break no limit as well. */
  allCases?: boolean;
}

/**
 * With everything as it stands, what flows where and at what pressure?
 *
 * Throws NoSteadyAnswer where the network has none.
 */
export async function operateLayout(layout: Layout, options: OperateOptions = {}): Promise<FlowAnswer> {
  const rig = await Rig.of(layout);
  const { staging } = layout;
  const state = governed(rig, staging, options.nozzleState);
  const { assembly } = state;
  const beside = alwaysRun(rig, state, options.nozzleState);
  const cases: HazardCase[] = [{ kind: 'laid', when: 'with the lay as it stands', point: state }, ...beside];
  const lineControl = lineControlOf(rig, state, options.nozzleState);
  const heat = heatOf(layout, state, beside.find(({ kind }) => kind === 'laid_shut')?.point);
  const tank = tankClockIfSteady(layout, state);
  const impossible = impossibilities(state);
  const nozzles = assembly.nozzles.map((nozzle) => nozzleAnswer(state, nozzle));
  return {
    question: 'flow',
    title: layout.title,
    engine: layout.engine.name,
    site: assembly.site,
    staging,
    impossible,
    hoseWithoutLimit: hoseWithoutLimit(assembly),
    points: gaugePoints(state),
    lines: assembly.elements
      .filter(({ kind }) => kind !== 'pump')
      .map((element) => lineAnswer(state, element)),
    nozzles,
    pumps: assembly.pumps.map((pump) => pumpAnswer(state, pump)),
    returns: returns(state),
    totalFlow: totalFlow(state),
    tank,
    heat,
    supply: supplyOf(layout, state),
    portableTanks: portableTanks(state),
    profiles: profiles(state),
    lineControl,
    habits: endToEndHabits(state),
    cases: caseAnswers(rig, beside, stuckShut(rig, state)).filter(
      ({ breaks }) => options.allCases || breaks.length > 0,
    ),
    cautions: gatedCautions({
      layout,
      cases,
      heat,
      control: lineControl,
      tank,
      ledger: ledgerOf({ cases: cases.filter(({ point }) => !whyImpossible(point)), axles: axlesOf(layout) }),
    }),
    assumptions: [...assumptions(layout, assembly.site), ...backflow(cases.map(({ point }) => point))],
    solver: solverReport(state),
  };
}

function lineAnswer(state: OperatingPoint, element: Element): LineAnswer {
  const { name, kind, from, to, link, bore, lines, modelName } = element;
  const flow = state.flow(link);
  return {
    name,
    kind: modelName === name ? kind : `${kind}, ${modelName}`,
    flow,
    velocity: bore === undefined ? undefined : flowVelocity(flow / lines, bore),
    loss: state.lossOf(element),
    inletPressure: state.totalPressure(from),
    outletPressure: state.totalPressure(to),
  };
}

function nozzleAnswer(state: OperatingPoint, nozzle: AssembledNozzle): NozzleAnswer {
  const { name, model, link, inlet } = nozzle;
  const flow = link === undefined ? 0 : Math.max(0, state.flow(link));
  const total = state.totalPressure(inlet);
  const tee = model.kind === 'sharp_orifice' ? model.tee_bore : undefined;
  const pressure =
    tee === undefined
      ? total
      : total - pressureOfHeight(velocityHead(flow, tee), state.assembly.site.waterDensity);
  const answer: NozzleAnswer = {
    name,
    kind: nozzle.modelName,
    state: nozzle.state,
    flow,
    pressure,
    reads: tee === undefined ? 'total' : 'static_in_tee',
  };
  if (model.kind === 'open_end') return answer;
  if (nozzle.state === 'open' && flow > STANDSTILL) {
    if (model.kind === 'smooth_bore') {
      answer.reaction = smoothBoreReaction(boreOf(model), pressure);
      answer.reach = smoothBoreReach(boreOf(model), pressure);
    } else if (model.kind !== 'sharp_orifice') answer.reaction = fogReaction(flow, pressure);
  }
  const { working } = model;
  if (working && (working.from !== undefined || working.to !== undefined)) {
    answer.range = { ...working, source: citation(model, 'working') };
    if (nozzle.state === 'open') {
      answer.inRange =
        pressure >= (working.from ?? 0) && pressure <= (working.to ?? Number.POSITIVE_INFINITY);
    }
  }
  return answer;
}
