import type { AssembleOptions } from '../assembly/assemble.js';
import type { StagingName } from '../assembly/assembly.js';
import type { OperatingPoint } from '../assembly/operating-point.js';
import { reliefLift } from '../assembly/relief.js';
import type { Layout } from '../layout/layout.js';
import {
  type HighestSetting,
  highestSettings,
  lowestOfSettings,
  type SettingPlace,
} from '../limits/highest-setting.js';
import { boilingPressure, whyImpossible } from '../limits/impossible.js';
import type { Delivery } from './delivery.js';
import { governed, holdPressure } from './governor.js';
import { ifSteady } from './if-steady.js';
import { type Rig, SolvedAssembly } from './rig.js';
import { type Surge, surgesOf } from './surge.js';

const IN_SERIES = ['series', 'series_reversed'] as const;
/** Nozzles that are shut one at a time, those that flow most first. */
const MOST_SHUT = 12;

export type ControlDevice =
  | { kind: 'relief'; set: number; overpressure: number; fullFlow: number }
  | { kind: 'governor'; set: number };

/** The pressure between two pumps in series, against what the second one's inlet and seal bear. */
export interface InterStage {
  staging: StagingName;
  second: string;
  /** At the second pump's inlet with the outlets shut, Pa. */
  shut: number;
  limit?: number;
  /** At the second pump's discharge with the outlets shut, every device acting, Pa. */
  discharge: number;
  casing?: number;
}

/** The greatest rise that shutting one line makes elsewhere. */
export interface LineShut {
  nozzle: string;
  at: string;
  rise: number;
  /** At another nozzle, rather than at a pump. */
  held: boolean;
}

/** What keeps the pressure down when a line is shut, and what it does all the same. */
export interface LineControl {
  device?: ControlDevice;
  /** A relief valve that is stated, and in this staging stands where no water comes. */
  reliefIdle: boolean;
  /** Highest pump discharge with everything shut, less the setting of the device, Pa; the 30 psi rule is held against it. */
  overSetting?: number;
  /** Of a lay with nozzles. */
  lineShut?: LineShut;
  surges: Surge[];
}

export interface PressureControl extends LineControl {
  /** Highest pump discharge, as its gauge reads, Pa: at the required flow, and with the outlets shut and the device acting. */
  flowing: number;
  shut: number;
  /** What the required flow takes at its pressure where the device stands, Pa, whatever the device is set to; undefined where the curves end before. */
  needed?: number;
  /** The least of the highest settings of each place that a device stands at. */
  highest?: HighestSetting;
  places: SettingPlace[];
  series: InterStage[];
}

/** What keeps the pressure down when lines are shut, where it should be set, and what happens when they are. */
export function pressureControlOf(
  rig: Rig,
  delivery: Delivery,
  state: OperatingPoint,
  margin: number | undefined,
): PressureControl {
  const { layout } = rig;
  const device = deviceOf(rig, state.assembly.site.waterDensity);
  const flowing = highestDischarge(state);
  const shutState = shutOf(rig, delivery);
  const shut = highestDischarge(shutState);
  const laid = layout.lay.length > 0 ? governed(rig, layout.staging) : undefined;
  const places = highestSettings(layout, laid ?? state);
  return {
    device,
    reliefIdle: reliefIdle(layout),
    flowing,
    needed: margin === undefined ? undefined : neededAt(state, device) - margin,
    shut,
    overSetting: device && shut - device.set,
    highest: lowestOfSettings(places),
    places,
    series: layout.engine.pumps.b
      ? IN_SERIES.flatMap((staging) => ifSteady(() => interStage(rig, staging)) ?? [])
      : [],
    lineShut: laid && lineShut(rig, laid),
    surges: laid ? surgesOf(layout, laid) : [],
  };
}

/** What keeps the pressure of a lay down as it stands. */
export function lineControlOf(
  rig: Rig,
  laid: OperatingPoint,
  nozzleState?: AssembleOptions['nozzleState'],
): LineControl {
  const { layout } = rig;
  const device = deviceOf(rig, laid.assembly.site.waterDensity);
  const shut = device && ifSteady(() => governed(rig, layout.staging, () => 'shut'));
  return {
    device,
    reliefIdle: reliefIdle(layout),
    overSetting: device && shut && highestDischarge(shut) - device.set,
    lineShut: lineShut(rig, laid, nozzleState),
    surges: surgesOf(layout, laid),
  };
}

/**
 * The highest pressure at a place where the device reads, Pa. What is drawn beyond it is the required flow alone, so that less the
 * margin at the outlet it is what that flow takes, whether the valve is open or not.
 */
function neededAt(state: OperatingPoint, device: ControlDevice | undefined): number {
  const { reliefs, network } = state.assembly;
  if (device?.kind !== 'relief' || reliefs.length === 0) return highestDischarge(state);
  const standing = reliefs.map(({ link }) => {
    const node = network.links[link].from;
    return state.pressureOf(state.solution.heads[node] - network.nodes[node].elevation);
  });
  return Math.max(...standing);
}

/** Whether the relief valve stands where the discharges meet, and they do not. */
function reliefIdle({ engine, staging }: Layout): boolean {
  return staging === 'separate' && engine.relief?.at === 'manifold';
}

function deviceOf({ layout }: Rig, waterDensity: number): ControlDevice | undefined {
  const { throttle, engine } = layout;
  if (throttle.by === 'discharge_pressure') return { kind: 'governor', set: throttle.discharge_pressure };
  if (engine.relief === undefined || reliefIdle(layout)) return undefined;
  return { kind: 'relief', set: engine.relief.opens_at, ...reliefLift(engine.relief, waterDensity) };
}

function highestDischarge(state: OperatingPoint): number {
  const own = state.assembly.pumps.filter((pump) => !pump.booster);
  return Math.max(...own.map((pump) => state.gaugePressure(pump.discharge)));
}

/** The outlets shut, with the governor, where there is one, turning the pumps down. */
function shutOf(rig: Rig, delivery: Delivery): OperatingPoint {
  const { throttle } = rig.layout;
  if (throttle.by === 'speed') return delivery.atRest();
  const assembly = rig.assemble({ staging: delivery.staging, lay: 'none' });
  return holdPressure(new SolvedAssembly(assembly), throttle.discharge_pressure);
}

function interStage(rig: Rig, staging: 'series' | 'series_reversed'): InterStage | undefined {
  const state = new SolvedAssembly(rig.assemble({ staging, lay: 'none' })).solve();
  const second = state.assembly.pumps.filter((pump) => !pump.booster)[1];
  if (whyImpossible(state) || state.gaugePressure(second.inlet) <= boilingPressure(state)) return undefined;
  return {
    staging,
    second: second.name,
    shut: state.totalPressure(second.inlet),
    limit: second.model.limits?.inlet,
    discharge: state.totalPressure(second.discharge),
    casing: second.model.limits?.casing,
  };
}

/** Each nozzle shut by itself: the greatest rise at a pump or at another nozzle. */
function lineShut(
  rig: Rig,
  open: OperatingPoint,
  nozzleState?: AssembleOptions['nozzleState'],
): LineShut | undefined {
  const flowing = open.assembly.nozzles
    .flatMap(({ name, link, state }) =>
      state === 'open' && link !== undefined ? [{ name, flow: open.flow(link) }] : [],
    )
    .sort((a, b) => b.flow - a.flow);
  let worst: LineShut | undefined;
  for (const { name } of flowing.slice(0, MOST_SHUT)) {
    const after = ifSteady(() =>
      governed(rig, rig.layout.staging, (nozzle, stated) =>
        nozzle === name ? 'shut' : (nozzleState?.(nozzle, stated) ?? stated),
      ),
    );
    if (after === undefined) continue;
    const before = new Map(places(open).map(({ at, pressure }) => [at, pressure]));
    for (const { at, pressure, held } of places(after)) {
      const rise = pressure - (before.get(at) ?? pressure);
      if (at !== name && rise > (worst?.rise ?? 0)) worst = { nozzle: name, at, rise, held };
    }
  }
  return worst;
}

function places(state: OperatingPoint): { at: string; pressure: number; held: boolean }[] {
  const { pumps, nozzles } = state.assembly;
  return [
    ...pumps.map((pump) => ({
      at: `the discharge of ${pump.name}`,
      pressure: state.totalPressure(pump.discharge),
      held: false,
    })),
    ...nozzles
      .filter((nozzle) => nozzle.state === 'open')
      .map((nozzle) => ({ at: nozzle.name, pressure: state.totalPressure(nozzle.inlet), held: true })),
  ];
}
