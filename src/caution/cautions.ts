import { axlePlace } from './axle-place.js';
import { carriedHose } from './carried-hose.js';
import { type Caution, literal } from './caution.js';
import { coolingLine } from './cooling-line.js';
import { curveBeyond } from './curve-beyond.js';
import { droopingCurve } from './drooping-curve.js';
import { enginePower } from './engine-power.js';
import { gaugeRange } from './gauge-range.js';
import { governorBelow } from './governor-below.js';
import { type Hazard, type HazardFacts, keyOf, ranked } from './hazard.js';
import { highLift } from './high-lift.js';
import { hoseLimitUnknown } from './hose-limit-unknown.js';
import { hosePressure } from './hose-pressure.js';
import { hotPump } from './hot-pump.js';
import { inletVapour } from './inlet-vapour.js';
import { intakeFloor } from './intake-floor.js';
import { judgedAtPanel } from './judged-at-panel.js';
import { lineShut } from './line-shut.js';
import { mixedRules } from './mixed-rules.js';
import { noCheckValve } from './no-check-valve.js';
import { nozzleShort } from './nozzle-short.js';
import { offCurve } from './off-curve.js';
import { overweight } from './overweight.js';
import { pumpPressure } from './pump-pressure.js';
import { pumpShutOut } from './pump-shut-out.js';
import { relayRelief } from './relay-relief.js';
import { reliefIdle } from './relief-idle.js';
import { reliefSetting } from './relief-setting.js';
import { ridgePressure } from './ridge-pressure.js';
import { slopeAsHeight } from './slope-as-height.js';
import { starvedNozzle } from './starved-nozzle.js';
import { steepEfficiency } from './steep-efficiency.js';
import { suctionShort } from './suction-short.js';
import { surge } from './surge.js';
import { tankRunsOut } from './tank-runs-out.js';
import { thinAir } from './thin-air.js';
import { thinMargin } from './thin-margin.js';
import { unmeasuredShutoff } from './unmeasured-shutoff.js';
import { wrongStaging } from './wrong-staging.js';

const HAZARDS: readonly Hazard[] = [
  pumpShutOut,
  coolingLine,
  hotPump,
  pumpPressure,
  hosePressure,
  carriedHose,
  hoseLimitUnknown,
  reliefSetting,
  reliefIdle,
  lineShut,
  surge,
  gaugeRange,
  inletVapour,
  suctionShort,
  intakeFloor,
  highLift,
  relayRelief,
  ridgePressure,
  nozzleShort,
  noCheckValve,
  droopingCurve,
  curveBeyond,
  offCurve,
  enginePower,
  steepEfficiency,
  thinAir,
  wrongStaging,
  judgedAtPanel,
  governorBelow,
  thinMargin,
  starvedNozzle,
  slopeAsHeight,
  tankRunsOut,
  overweight,
  axlePlace,
  mixedRules,
  unmeasuredShutoff,
];

/**
 * The facts with the words that hazards build their sentences of made fit for a template: a `when` names a nozzle of the
 * layout, a limit what it is the limit of. A place (`at`) is a value of its caution and stays as it is.
 */
function worded(facts: HazardFacts): HazardFacts {
  const { ledger, judged, control } = facts;
  const lineShut = control?.lineShut;
  return {
    ...facts,
    cases: facts.cases.map((one) => ({ ...one, when: literal(one.when) })),
    ...(ledger && {
      ledger: ledger.map((line) => ({
        ...line,
        limit: literal(line.limit),
        worstWhen: literal(line.worstWhen),
      })),
    }),
    ...(judged && { judged: { ...judged, judgedAt: literal(judged.judgedAt) } }),
    ...(lineShut && {
      control: { ...control, lineShut: { ...lineShut, nozzle: literal(lineShut.nozzle) } },
    }),
  };
}

/**
 * Every hazard of the facts, most dangerous first. What the lay does as it stands is told before what a burst hose or a
 * lost pump would make of the same part.
 */
export function cautionsOf(given: HazardFacts): Caution[] {
  const facts = worded(given);
  const found = (cases: HazardFacts['cases']) => HAZARDS.flatMap((hazard) => hazard({ ...facts, cases }));
  const standing = facts.cases.filter(({ kind }) => kind !== 'burst' && kind !== 'one_out');
  if (standing.length === facts.cases.length) return ranked(found(facts.cases));
  const first = found(standing);
  const known = new Set(first.map(keyOf));
  return ranked([...first, ...found(facts.cases).filter((caution) => !known.has(keyOf(caution)))]);
}
