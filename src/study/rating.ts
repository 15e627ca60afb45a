import type { StagingName } from '../assembly/assembly.js';
import { returns } from '../assembly/delivered.js';
import { cautionsOf } from '../caution/cautions.js';
import type { HazardCase } from '../caution/hazard.js';
import type { Layout, TypingAsked } from '../layout/layout.js';
import { judgeAcross } from './across.js';
import type { CheckAnswer, Requirement, RunningFacts, StagingAnswer, Sweep } from './answer.js';
import { assumptions, backflow, totalForGauge } from './assumptions.js';
import { closingOrifice } from './delivery.js';
import { engineFacts } from './engine-facts.js';
import { highestPlace } from './highest-place.js';
import { besideInto } from './if-steady.js';
import { takeInventory } from './inventory.js';
import { laidCases } from './laid-cases.js';
import { ledgerOf, limitsNotKnown } from './ledger.js';
import { gaugePoints, lossesTo } from './losses.js';
import { NoSteadyAnswer } from './no-steady-answer.js';
import { bracketPower } from './power-bracket.js';
import { pressureControlOf } from './pressure-control.js';
import { pumpAnswer } from './pump-answer.js';
import { typingSource } from './requirement.js';
import { Rig } from './rig.js';
import { solverReport } from './solver-report.js';
import { judgeStaging, type StagingJudged, stagingAnswer } from './staging.js';
import { adviseStaging } from './staging-advice.js';
import { suctionOf } from './suction.js';
import { tankClockIfSteady } from './tank-clock.js';
import { orificeAnswer } from './test-orifice.js';

/** Stagings that every engine is judged in; pumps apart only where the layout has them so. */
const SIDE_BY_SIDE: readonly StagingName[] = ['parallel', 'series', 'series_reversed', 'a', 'b'];

/** Lines of the ledger that are shown unasked. */
const TIGHTEST = 3;

/** Raised where a layout is asked to be checked that names no typing. */
export class NoTyping extends Error {
  override name = 'NoTyping';
}

export interface CheckOptions {
  /** Other conditions that the verdict is wanted under too. */
  across?: readonly Sweep[];
  /** How much of the ledger of limits: its tightest lines, unless all are asked for. */
  ledger?: 'tightest' | 'all';
}

/**
 * Does this layout make its typing? Judges the layout's staging and every other one at the rating points, predicts the
 * reading at the agency's test orifice, takes the inventory, and looks for hazards.
 *
 * Throws NoTyping where the layout asks for none, NoSteadyAnswer where the network has none.
 */
export async function checkLayout(layout: Layout, options: CheckOptions = {}): Promise<CheckAnswer> {
  const { typing, staging } = layout;
  if (typing === undefined)
    throw new NoTyping(
      'the layout names no typing to check against: add typing: { scheme: nwcg, class: engine-3 }, or a flow and a pressure of your own',
    );
  const rig = await Rig.of(layout);
  const asked = SIDE_BY_SIDE.includes(staging) ? SIDE_BY_SIDE : [staging, ...SIDE_BY_SIDE];
  const own = judgeStaging(rig, typing, staging, 'always');
  const sideBySide = asked
    .filter((one) => rig.can(one))
    .map((one) => (one === staging ? own : judgeBeside(rig, typing, one)));
  const judged = sideBySide.filter((one) => 'worst' in one);
  const stagings = sideBySide.map((one) => ('worst' in one ? stagingAnswer(one) : one));
  const { worst, delivery, reading, shown, atRequiredFlow } = own;
  const { test_orifice } = typing.requirement;
  const testOrifice = test_orifice && reading && orificeAnswer(test_orifice, reading);
  const inventory = takeInventory(layout, typing);
  // The inspector reads one gauge: a pump that makes its flow at the outlet and not that reading does not pass.
  const pumpVerdict = own.verdict;
  const short = inventory.some(({ verdict }) => verdict === 'falls_short');
  const shut: HazardCase = { kind: 'shut', when: 'with the outlets shut', point: delivery.atRest() };
  const cases: HazardCase[] = [shut, ...laidCases(rig, staging)];
  const when = worst.refusal ? 'at the most that can be drawn' : 'at the required flow';
  if (shown) cases.unshift({ kind: 'operating', when, point: shown.state });
  if (worst.refusal && worst.state)
    cases.push({ kind: 'operating', when: 'at the required flow', point: worst.state });
  if (reading?.state) cases.push({ kind: 'operating', when: 'at the test orifice', point: reading.state });
  const leftOut: string[] = [];
  const beside = besideInto(leftOut);
  const powerBracket = beside('power that no file tells', () => bracketPower(rig, typing));
  const state = shown?.state;
  const running: RunningFacts = {
    pumps: state ? state.assembly.pumps.map((pump) => pumpAnswer(state, pump)) : [],
    returns: state ? returns(state) : [],
    highestPlace: beside('the highest place', () => highestPlace(rig, typing)),
    powerBracket,
    suction: beside('suction', () => suctionOf(rig, typing, own)),
    pressureControl: state && pressureControlOf(rig, delivery, state, atRequiredFlow?.margin),
    stagingAdvice: beside('which staging suits', () => adviseStaging(rig, judged, worst.point)),
  };
  const facts = engineFacts(rig, typing, judged, { working: state, shut: shut.point }, beside);
  const judgedAt = closingOrifice(rig)
    ? 'the gauge tee of the test orifice'
    : endName(delivery.end.name, delivery.assembly.ends.length);
  const ledger = ledgerOf({
    cases,
    axles: facts.axles,
    suction: running.suction,
    control: running.pressureControl,
  });
  const laid = cases.find(({ kind }) => kind === 'laid');
  return {
    question: 'check',
    leftOut,
    title: layout.title,
    engine: layout.engine.name,
    site: delivery.assembly.site,
    verdict: pumpVerdict === 'meets' && !short ? 'meets' : 'falls_short',
    pumpVerdict,
    requirement: requirementOf(typing, own),
    staging,
    judgedAt,
    atRequiredFlow,
    atRequiredPressure: own.atRequiredPressure,
    refusal: worst.refusal,
    toldAt: shown?.flow,
    testOrifice,
    stagings,
    inventory,
    losses: state ? lossesTo(state, delivery.end.place) : [],
    points: state ? gaugePoints(state) : [],
    ...running,
    ...facts,
    ledger: {
      lines: options.ledger === 'all' ? ledger : ledger.slice(0, TIGHTEST),
      of: ledger.length,
      notKnown: limitsNotKnown(layout, cases),
    },
    across: (options.across ?? []).map((sweep) => judgeAcross(rig, typing, sweep)),
    cautions: cautionsOf({
      layout,
      cases,
      pumpVerdict,
      running,
      heat: facts.heat,
      control: running.pressureControl,
      ledger,
      tank: laid && tankClockIfSteady(layout, laid.point),
      judged: { staging, stagings, judgedAt, ...facts },
      verdict: atRequiredFlow && {
        required: worst.point.pressure,
        margin: Math.min(atRequiredFlow.margin, testOrifice?.margin ?? atRequiredFlow.margin),
        reading: testOrifice?.reading,
      },
    }),
    assumptions: [
      ...assumptions(layout, delivery.assembly.site),
      ...(closingOrifice(rig) || !state ? [] : totalForGauge(judgedAt, state, delivery.end.place)),
      ...backflow(
        cases.map(({ point }) => point),
        facts.pumpsOut.some(({ standing }) => standing.length > 0),
      ),
    ],
    solver: solverReport(state ?? shut.point),
  };
}

/** A staging that the layout only might be in: where it has no steady answer, that is what is said of it. */
function judgeBeside(rig: Rig, typing: TypingAsked, staging: StagingName): StagingJudged | StagingAnswer {
  try {
    return judgeStaging(rig, typing, staging, 'if_it_decides');
  } catch (error) {
    if (!(error instanceof NoSteadyAnswer)) throw error;
    const limit = { template: '{why}', values: { why: error.message } };
    return { staging, verdict: 'falls_short', reachable: false, limit, shares: [] };
  }
}

/** What a report calls an end: `outlet left`, or plainly the outlet where it has no name of its own. */
function endName(name: string, ends: number): string {
  const plain = name.startsWith('outlet') ? `the ${name}` : `outlet ${name}`;
  return ends > 1 ? `${plain}, the best of ${ends}` : plain;
}

function requirementOf(typing: TypingAsked, own: StagingJudged): Requirement {
  const { requirement, table, scheme = 'custom', class: name = '' } = typing;
  const { point } = own.worst;
  return {
    scheme,
    class: name,
    title: requirement.name ?? (name === '' ? 'the requirement of the layout' : `${scheme} ${name}`),
    flow: point.flow,
    pressure: point.pressure,
    points: own.points.map((judged) => judged.point),
    source: typingSource(typing, 'flow'),
    edition: table && `${table.edition}, ${table.date}`,
  };
}
