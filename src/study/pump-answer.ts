import type { AssembledPump } from '../assembly/assembly.js';
import { coolingFlow, delivered, isShutOut } from '../assembly/delivered.js';
import type { OperatingPoint } from '../assembly/operating-point.js';
import { STANDSTILL } from '../assembly/standstill.js';
import { npshAvailable } from '../assembly/suction-head.js';
import { suctionNeed } from '../limits/suction-need.js';
import type { PumpAnswer } from './answer.js';
import { pumpShares } from './staging.js';

/** A speed this little below what its governor asks for is held by it: rounding, not want of power. */
const HELD = 1e-9;

/** A pump as it runs: what it moves, what it takes, and which of its limits it is at. */
export function pumpAnswer(state: OperatingPoint, pump: AssembledPump): PumpAnswer {
  const { model, link, inlet, discharge, held } = pump;
  const flow = state.flow(link);
  const rise = state.totalPressure(discharge) - state.totalPressure(inlet);
  const share = pumpShares(state).find(({ pump: name }) => `pump ${name}` === pump.name)?.share;
  const speed = state.speedOf(pump);
  const need = suctionNeed(state, pump);
  return {
    name: pump.name,
    model: pump.modelName,
    state: stateOf(state, pump),
    flow,
    delivered: delivered(state, pump),
    cooling: coolingFlow(state, pump),
    headRise: rise,
    inletPressure: state.gaugePressure(inlet),
    dischargePressure: state.gaugePressure(discharge),
    speed: model.rated_speed === undefined ? undefined : model.rated_speed * speed,
    ofRatedSpeed: speed,
    limitedBy: limitOf(state, pump),
    power: shaftPower(state, pump),
    powerAvailable: held?.availableAt(speed),
    powerRated: model.power?.rated,
    npshAvailable: npshAvailable(state, pump),
    npshRequired: toldBy(model.npsh_required, flow / speed) ? need.head : undefined,
    share: share ?? 1,
    offCurve: state.isOffCurve(pump),
  };
}

/** What a pump takes at its shaft at its flow and speed, worn as it is, W; undefined where its file does not tell it there. */
export function shaftPower(state: OperatingPoint, pump: AssembledPump): number | undefined {
  const flow = state.flow(pump.link);
  const speed = state.speedOf(pump);
  return toldBy(pump.model.efficiency, flow / speed) ? pump.held?.power.at(flow, speed) : undefined;
}

function stateOf(point: OperatingPoint, pump: AssembledPump): PumpAnswer['state'] {
  if (delivered(point, pump) > STANDSTILL) return 'running';
  return isShutOut(point, pump) ? 'shut_out' : 'dead_headed';
}

/** Whether the rows of a file tell of a flow at rated speed; beyond them it is reckoned with, and not reported. */
function toldBy(rows: readonly (readonly [number, number])[] | undefined, flow: number): boolean {
  return rows !== undefined && flow >= rows[0][0] && flow <= rows[rows.length - 1][0];
}

/** Which of the two limits a pump is at: the speed that its governor holds, or the power that its engine has. */
export function limitOf(state: OperatingPoint, pump: AssembledPump): PumpAnswer['limitedBy'] {
  if (pump.held === undefined) return 'not_known';
  return state.speedOf(pump) < pump.speed * (1 - HELD) ? 'power' : 'governor';
}
