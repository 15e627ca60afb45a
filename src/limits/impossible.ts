import type { OperatingPoint } from '../assembly/operating-point.js';
import { STANDSTILL } from '../assembly/standstill.js';
import { npshAvailable } from '../assembly/suction-head.js';
import type { Measure } from '../quantity/dimension.js';
import { flowsThrough, hoseLoads, isSoft, lowestAlong } from './hose-load.js';
import { certainSuctionNeed } from './suction-need.js';

/**
 * `water_parts`: static pressure below the vapour pressure of the water, at which a column of it parts. `hose_flat`: soft hose below the air,
 * which presses it flat, as on a ridge or where a siphon would have to draw. `past_curve`: a pump past the last point that it
 * was measured at. `suction_short`: a pump that moves water with less suction head than its own file asks for.
 */
export type ImpossibleCode = 'water_parts' | 'hose_flat' | 'past_curve' | 'suction_short';

/** Why a solved state cannot be, or is not known to be, whatever its figures say. */
export interface Impossibility {
  code: ImpossibleCode;
  /** `pump b`, `a turn of the ground under hose 2 of the lay`. */
  at: string;
  /** What the equations give there, and what it would have to be. */
  value: Measure;
  limit: Measure;
  /** A clause with {at}, {value} and {limit}: it follows `this cannot be:`. */
  why: string;
  source: string;
}

/** Pressures this little past a bound are the rounding of a solve, Pa (0.015 psi). */
const ROUNDING = 100;
/** Heads this little short are, too, m. */
const HEAD_ROUNDING = 0.01;

/**
 * The gate that every state passes before a figure of it is printed or a yes is said: everything in a state that cannot be;
 * empty where the state stands. A pump past its curve comes first, as all else rests on what is not known of it then.
 *
 * Where nothing flows, a pressure below the air's only says that no water comes up there: that is no impossibility of the
 * state, and no figure is printed there either.
 */
export function impossibilities(point: OperatingPoint): Impossibility[] {
  return [...pastCurves(point), ...partings(point), ...suctionsShort(point), ...flatHose(point)];
}

/** The first reason why a state cannot be; undefined where it stands. */
export function whyImpossible(point: OperatingPoint): Impossibility | undefined {
  return impossibilities(point)[0];
}

/** Gauge pressure at which water boils at the site of a state, Pa: nothing stands below it. */
export function boilingPressure({ assembly }: OperatingPoint): number {
  return assembly.site.vapourPressure - assembly.site.atmosphericPressure;
}

const pressure = (value: number): Measure => ({ value, dimension: 'pressure' });

function partings(point: OperatingPoint): Impossibility[] {
  const boils = boilingPressure(point);
  const { pumps, elements } = point.assembly;
  const places = [
    ...pumps
      .filter((pump) => Math.abs(point.flow(pump.link)) > STANDSTILL)
      .map((pump) => ({ at: `the inlet of ${pump.name}`, value: point.gaugePressure(pump.inlet) })),
    ...elements
      .filter((element) => element.kind !== 'pump' && flowsThrough(point, element))
      .flatMap((element) =>
        element.step?.kind === 'hose'
          ? [lowestOf(point, element)]
          : [
              { at: `the start of ${element.name}`, value: point.gaugePressure(element.from) },
              { at: `the end of ${element.name}`, value: point.gaugePressure(element.to) },
            ],
      ),
  ];
  return places
    .filter(({ value }) => value <= boils)
    .map(({ at, value }) => ({
      code: 'water_parts',
      at,
      value: pressure(value),
      limit: pressure(boils),
      why: '{at} would have to stand below {limit}, where water boils',
      source: 'vapor pressure of water and standard atmosphere',
    }));
}

function lowestOf(point: OperatingPoint, element: Parameters<typeof lowestAlong>[1]) {
  const { name, pressure: total } = lowestAlong(point, element);
  const { to } = element;
  return { at: name, value: total - (point.totalPressure(to) - point.gaugePressure(to)) };
}

function suctionsShort(point: OperatingPoint): Impossibility[] {
  return point.assembly.pumps.flatMap((pump): Impossibility[] => {
    const needed = certainSuctionNeed(point, pump);
    const available = npshAvailable(point, pump);
    if (needed === undefined || available >= needed - HEAD_ROUNDING) return [];
    return [
      {
        code: 'suction_short',
        at: pump.name,
        value: { value: available, dimension: 'length' },
        limit: { value: needed, dimension: 'length' },
        why: '{at} would cavitate: it needs {limit} of suction head by its own file and has {value}',
        source: 'suction head that the file of the pump asks for',
      },
    ];
  });
}

function pastCurves(point: OperatingPoint): Impossibility[] {
  return point.assembly.pumps
    .filter((pump) => point.isOffCurve(pump))
    .map((pump) => ({
      code: 'past_curve',
      at: pump.name,
      value: { value: point.flow(pump.link), dimension: 'flow' },
      limit: { value: pump.curve.lastFlow * point.speedOf(pump), dimension: 'flow' },
      why: '{at} would move more than {limit}, where its curve ends, and more is not known of it',
      source: 'points of the pump curve',
    }));
}

function flatHose(point: OperatingPoint): Impossibility[] {
  return hoseLoads(point)
    .filter((load) => load.lowest < -ROUNDING && isSoft(load) && flowsThrough(point, load.element))
    .map(({ element }) => {
      const { name, pressure: value } = lowestAlong(point, element);
      return {
        code: 'hose_flat',
        at: name,
        value: pressure(value),
        limit: pressure(0),
        why: 'the hose at {at} would have to stand at {value}, and below the pressure of the air soft hose is pressed flat',
        source: 'lay-flat hose has no strength against the air (common practice, no source)',
      };
    });
}
