import type { PumpAnswer, SiteConditions } from '../study/answer.js';
import { orNull, Vacuum } from './json-tree.js';
import { of } from './required.js';
import { noState, reasonTree, standingTree } from './standing.js';

export function pumpTree(pump: PumpAnswer, site: SiteConditions) {
  const none = noState(pump.inletPressure, site, pump.flow);
  return {
    name: pump.name,
    model: pump.model,
    state: pump.state,
    flow: of('flow', pump.flow),
    delivered: of('flow', pump.delivered),
    cooling_flow: orNull('flow', pump.cooling),
    head_rise: of('pressure', pump.headRise),
    inlet_pressure: standingTree(none, pump.inletPressure),
    discharge_pressure: standingTree(
      noState(pump.dischargePressure, site, pump.flow),
      pump.dischargePressure,
    ),
    inlet_vacuum: pump.inletPressure < 0 && !none ? new Vacuum(-pump.inletPressure) : null,
    speed: orNull('speed', pump.speed),
    of_rated_speed: of('ratio', pump.ofRatedSpeed),
    limited_by: pump.limitedBy,
    power: orNull('power', pump.power),
    power_available: orNull('power', pump.powerAvailable),
    power_rated: orNull('power', pump.powerRated),
    npsh_available: pump.npshAvailable > 0 ? of('length', pump.npshAvailable) : null,
    npsh_required: orNull('length', pump.npshRequired),
    share: of('ratio', pump.share),
    off_curve: pump.offCurve,
    reason: reasonTree(none, noState(pump.dischargePressure, site, pump.flow)),
  };
}
