import { pointPressures } from '../../assembly/pump.js';
import type { Layout } from '../../layout/layout.js';
import { REFERENCE_WATER_DENSITY } from '../../physics/constants.js';
import { heightOfPressure, pressureOfHeight } from '../../physics/elevation.js';
import { headAt, type PumpCurve } from '../../physics/pump-curve/curve.js';
import { MonotoneCurve } from '../../physics/pump-curve/monotone.js';
import type { Setting } from '../draft.js';
import { SI_VALUE } from '../solver/si.js';

export type Point = readonly [flow: number, pressure: number];

export interface OwnPump {
  readonly table: readonly Point[];
  /** Pressure at a flow, in the units of the sheet. */
  readonly at: (flow: number) => number;
  readonly curve: PumpCurve;
}

/** A pump's points as the layout has them, in the units of the sheet, and the curve that the program puts through them. */
export function pumpOf(layout: Layout, name: 'a' | 'b', setting: Setting): OwnPump | undefined {
  const pump = layout.engine.pumps[name];
  if (pump === undefined) return undefined;
  const si = SI_VALUE[setting.units];
  const table = pointPressures(pump.model).map(
    ([flow, pressure]): Point => [Math.round(flow / si.flow), Math.round(pressure / si.pressure)],
  );
  const curve = new MonotoneCurve(
    table.map(([flow, pressure]) => ({
      flow: flow * si.flow,
      head: heightOfPressure(pressure * si.pressure, REFERENCE_WATER_DENSITY),
    })),
  );
  const at = (flow: number) =>
    pressureOfHeight(headAt(curve, flow * si.flow), REFERENCE_WATER_DENSITY) / si.pressure;
  return { table, at, curve };
}

/** The most that the rig's pumps make at a flow in any staging that they have, at full speed and unworn; 0 off their curves. */
export function mostPressure(layout: Layout, setting: Setting, flow: number): number {
  const pumps = (['a', 'b'] as const).flatMap((name) => pumpOf(layout, name, setting) ?? []);
  const made = ({ table, at }: OwnPump, each: number) =>
    each >= table[0][0] && each <= table[table.length - 1][0] ? Math.max(0, at(each)) : 0;
  const alone = Math.max(0, ...pumps.map((pump) => made(pump, flow)));
  if (pumps.length < 2) return alone;
  const parallel = Math.min(...pumps.map((pump) => made(pump, flow / 2)));
  const inSeries = pumps.map((pump) => made(pump, flow));
  const series = inSeries.every((each) => each > 0) ? inSeries.reduce((sum, each) => sum + each, 0) : 0;
  return Math.max(alone, parallel, series);
}
