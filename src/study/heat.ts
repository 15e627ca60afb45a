import type { AssembledPump } from '../assembly/assembly.js';
import type { OperatingPoint } from '../assembly/operating-point.js';
import { STANDSTILL } from '../assembly/standstill.js';
import type { Layout } from '../layout/layout.js';
import { RISE_ALLOWED, SCALDING } from '../limits/water-temperature.js';
import { heightOfPressure } from '../physics/elevation.js';
import { boilingTemperature, flowForRise, roughLeastFlow, timeToWarm } from '../physics/pump-heat.js';
import { temperatureRise, waterPower } from '../physics/pump-power.js';
import type { CoolingPlace, HeatAnswer } from './engine-answer.js';

/** What each of the engine's own pumps does to the temperature of its water: at work, and with every outlet shut. */
export function heatOf(layout: Layout, working: OperatingPoint, shut?: OperatingPoint): HeatAnswer[] {
  return working.assembly.pumps
    .filter((pump) => !pump.booster)
    .map((pump) => {
      const same = shut?.assembly.pumps.find(({ name }) => name === pump.name);
      return pumpHeat(layout, working, pump, shut && same && { state: shut, pump: same });
    });
}

function pumpHeat(
  layout: Layout,
  working: OperatingPoint,
  pump: AssembledPump,
  shut: { state: OperatingPoint; pump: AssembledPump } | undefined,
): HeatAnswer {
  const { site } = working.assembly;
  const { waterDensity, waterTemperature, atmosphericPressure } = site;
  const flow = working.flow(pump.link);
  const { basis, power } = powerAtShutoff(pump);
  const shutFlow = shut ? Math.max(0, shut.state.flow(shut.pump.link)) : 0;
  const cooling = coolingPlace(layout);
  const trapped = pump.model.trapped_volume;
  const mass = trapped && trapped * waterDensity;
  const boiling = boilingTemperature(atmosphericPressure);
  return {
    name: pump.name,
    flow,
    leaving: leavingTemperature(working, pump),
    basis,
    powerAtShutoff: power,
    leastFlow: power && flowForRise(power, RISE_ALLOWED, waterDensity),
    roughLeastFlow: power && roughLeastFlow(power),
    shutFlow,
    shutLeaving: shut && leavingTemperature(shut.state, shut.pump),
    cooling,
    coolsShutOut: cooling === 'own',
    trapped,
    untilScald: power && mass ? timeToWarm(power, mass, waterTemperature, SCALDING) : undefined,
    untilBoiling: power && mass ? timeToWarm(power, mass, waterTemperature, boiling) : undefined,
  };
}

/** At the speed of its governor, W: by its efficiency, else at most what its engine is rated at. */
function powerAtShutoff(pump: AssembledPump) {
  const { held, model, speed } = pump;
  if (held) {
    const out = { speed, slope: 0 };
    held.evaluate(0, speed, out);
    return { basis: 'efficiency' as const, power: held.power.at(0, out.speed) };
  }
  if (model.power) return { basis: 'engine_rating' as const, power: model.power.rated };
  return { basis: 'not_known' as const, power: undefined };
}

/**
 * How warm water leaves a pump, K, all of the power that does not become pressure staying in it; undefined where nothing flows or
 * the power is not known. Water that circulates in the pump takes the power that the pump takes at that flow.
 */
function leavingTemperature(state: OperatingPoint, pump: AssembledPump): number | undefined {
  const { waterDensity } = state.assembly.site;
  const flow = state.flow(pump.link);
  const { held, model } = pump;
  const entering = enteringTemperature(state, pump);
  const shaft = held ? held.power.at(flow, state.speedOf(pump)) : model.power?.rated;
  if (shaft === undefined || entering === undefined || flow <= STANDSTILL) return undefined;
  const rise = state.totalPressure(pump.discharge) - state.totalPressure(pump.inlet);
  const useful = waterPower(flow, heightOfPressure(Math.max(0, rise), waterDensity), waterDensity);
  return entering + temperatureRise(Math.max(shaft, useful), useful, flow, waterDensity);
}

/** How warm water comes to a pump, K: in series the second draws what the first has warmed; undefined where that is not known. */
function enteringTemperature(state: OperatingPoint, pump: AssembledPump): number | undefined {
  const { pumps, site, staging } = state.assembly;
  const [first] = pumps.filter((one) => !one.booster);
  return staging.startsWith('series') && pump !== first
    ? leavingTemperature(state, first)
    : site.waterTemperature;
}

function coolingPlace({ engine }: Layout): CoolingPlace {
  const { cooling } = engine.plumbing;
  if (cooling === undefined) return 'none';
  if (cooling.state === 'shut') return 'shut';
  if (cooling.at === 'manifold') return 'shared';
  return cooling.at === 'discharge' ? 'behind_check' : 'own';
}
