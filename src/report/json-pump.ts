import type { PumpAnswer } from '../study/answer.js';
import { orNull, Vacuum } from './json-tree.js';
import { of } from './required.js';

export const pumpTree = (pump: PumpAnswer) => ({
  name: pump.name,
  model: pump.model,
  state: pump.state,
  flow: of('flow', pump.flow),
  delivered: of('flow', pump.delivered),
  cooling_flow: orNull('flow', pump.cooling),
  head_rise: of('pressure', pump.headRise),
  inlet_pressure: of('pressure', pump.inletPressure),
  discharge_pressure: of('pressure', pump.dischargePressure),
  inlet_vacuum: pump.inletPressure < 0 ? new Vacuum(-pump.inletPressure) : null,
  speed: orNull('speed', pump.speed),
  of_rated_speed: of('ratio', pump.ofRatedSpeed),
  limited_by: pump.limitedBy,
  power: orNull('power', pump.power),
  power_available: orNull('power', pump.powerAvailable),
  power_rated: orNull('power', pump.powerRated),
  npsh_available: of('length', pump.npshAvailable),
  npsh_required: orNull('length', pump.npshRequired),
  share: of('ratio', pump.share),
  off_curve: pump.offCurve,
});
