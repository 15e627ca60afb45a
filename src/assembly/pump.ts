import { type Pump, powerCurveFits } from '../catalogue/schema/pump.js';
import { REFERENCE_WATER_DENSITY } from '../physics/constants.js';
import { heightOfPressure, pressureOfHeight } from '../physics/elevation.js';
import type { CurvePoint, PumpCurve } from '../physics/pump-curve/curve.js';
import { MonotoneCurve } from '../physics/pump-curve/monotone.js';
import { PowerCurve } from '../physics/pump-curve/power.js';
import type { QuadraticCurve } from '../physics/pump-curve/quadratic.js';
import { WornCurve } from '../physics/pump-curve/wear.js';
import { waterDensity } from '../physics/water.js';

/** Curves of the second degree, fitted ahead because their least squares are loaded only where one is asked for. */
export type FittedCurves = ReadonlyMap<Pump, QuadraticCurve>;

/** Fits the curves of the second degree among the pumps. */
export async function fitCurves(pumps: readonly Pump[]): Promise<FittedCurves> {
  const quadratic = pumps.filter((pump) => pump.shape === 'quadratic');
  if (quadratic.length === 0) return new Map();
  const { fitQuadratic } = await import('../physics/pump-curve/quadratic.js');
  return new Map(
    await Promise.all(quadratic.map(async (pump) => [pump, await fitQuadratic(pointsOf(pump))] as const)),
  );
}

/** The curve of a pump at its rated speed, worn by a part of its head. */
export function pumpCurveOf(pump: Pump, wear: number, fitted: FittedCurves): PumpCurve {
  const curve = unworn(pump, fitted);
  return wear > 0 ? new WornCurve(curve, wear) : curve;
}

function unworn(pump: Pump, fitted: FittedCurves): PumpCurve {
  const points = pointsOf(pump);
  const shape = pump.shape ?? (points.length === 3 && powerCurveFits(pump.points) ? 'power' : 'monotone');
  if (shape === 'power') return new PowerCurve(points);
  if (shape === 'monotone') return new MonotoneCurve(points);
  const curve = fitted.get(pump);
  if (curve === undefined) throw new TypeError('a curve of the second degree is fitted before it is used');
  return curve;
}

/**
 * Head is what a pump makes whatever the water's density. A head stands as it is printed; a pressure is that of the water
 * it was read in.
 */
function pointsOf(pump: Pump): CurvePoint[] {
  const { water_temperature } = pump.tested_at ?? {};
  const density = water_temperature === undefined ? REFERENCE_WATER_DENSITY : waterDensity(water_temperature);
  return pump.points.map(([flow, rise]) => ({
    flow,
    head: typeof rise === 'number' ? heightOfPressure(rise, density) : rise.head,
  }));
}

/** The points of a pump's curve as flow, m3/s, and pressure, Pa: as written, or what a head makes of reference water. */
export function pointPressures(pump: Pump): [flow: number, pressure: number][] {
  return pump.points.map(([flow, rise]) => [
    flow,
    typeof rise === 'number' ? rise : pressureOfHeight(rise.head, REFERENCE_WATER_DENSITY),
  ]);
}
