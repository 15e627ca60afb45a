import { pressuresAlong } from '../assembly/along-hose.js';
import { leastPressure, needOf } from '../assembly/nozzle-needs.js';
import { citation } from '../catalogue/citation.js';
import type { Hose } from '../catalogue/schema/hose.js';
import type { Progressive } from '../layout/progressive.js';
import { INTAKE_FLOOR, INTAKE_FLOOR_SOURCE } from '../physics/relay.js';
import type { LimitMet } from './advance-answer.js';
import { type GrowingLay, type LaidOut, VARIANT_TANK } from './growing-lay.js';
import { portableTanks } from './supply.js';

/** Pressure at the inlet of an open tank below which no water comes up to it, Pa. */
const AT_OPEN_TANK = 0;
/** Flows that differ by less than this are one, m3/s (0.02 gpm). */
const FLOW_SLACK = 1e-6;
/** Less than this under a limit is the rounding of a solve, Pa. */
const SLACK = 1;

/** The least pressure at the intake of the plan's pump, and where that is from. */
export function intakeFloor({ booster }: Progressive): { pressure: number; source: string } {
  return booster.intake === undefined
    ? { pressure: INTAKE_FLOOR, source: INTAKE_FLOOR_SOURCE }
    : { pressure: booster.intake, source: 'stated in the layout' };
}

/** Every limit of pressure that a lay breaks at a length, the nozzles first. */
export function pressureLimits(lay: GrowingLay, laid: LaidOut): LimitMet[] {
  return [
    ...intakes(lay, laid),
    ...tanksInLine(laid),
    ...nozzlesShort(laid),
    ...hoseOver(laid, 'flowing'),
    ...hoseOver(laid, 'shut'),
  ];
}

function nozzlesShort({ point, nozzles }: LaidOut): LimitMet[] {
  const short = nozzles.flatMap((nozzle): LimitMet[] => {
    if (nozzle.state !== 'open') return [];
    const least = leastPressure(nozzle);
    const pressure = point.totalPressure(nozzle.inlet);
    if (least === undefined || pressure >= least - SLACK) return [];
    const { model } = nozzle;
    const ranged = model.kind !== 'open_end' && model.working?.from !== undefined;
    return [
      {
        code: 'nozzle_below_minimum',
        at: nozzle.name,
        state: 'flowing',
        value: { value: pressure, dimension: 'pressure' },
        limit: { value: least, dimension: 'pressure' },
        source: ranged ? citation(model, 'working') : (needOf(nozzle)?.source ?? 'stated in the layout'),
      },
    ];
  });
  return short.sort((a, b) => a.value.value / a.limit.value - b.value.value / b.limit.value);
}

/** An open tank of the lay that is drawn from faster than it is filled. */
function tanksInLine({ point }: LaidOut): LimitMet[] {
  return portableTanks(point).flatMap(({ name, inflow, outflow }): LimitMet[] => {
    if (name === VARIANT_TANK || outflow <= inflow + FLOW_SLACK) return [];
    return [
      {
        code: 'tank_not_fed',
        at: name,
        state: 'flowing',
        value: { value: inflow, dimension: 'flow' },
        limit: { value: outflow, dimension: 'flow' },
        source: 'what is drawn from an open tank has to run into it',
      },
    ];
  });
}

/** One length says it for all: the one that is furthest over its limit. */
function hoseOver(laid: LaidOut, state: LimitMet['state']): LimitMet[] {
  const point = state === 'shut' ? laid.shut : laid.point;
  let worst: { at: string; pressure: number; hose: Hose; limit: number } | undefined;
  for (const element of laid.hose) {
    const hose = element.step?.kind === 'hose' ? element.step.hose : undefined;
    const limit = hose && lowestLimit(hose);
    if (hose === undefined || limit === undefined) continue;
    const pressure = pressuresAlong(point, element).highest;
    if (pressure > limit + SLACK && (worst === undefined || pressure / limit > worst.pressure / worst.limit))
      worst = { at: element.name, pressure, hose, limit };
  }
  if (worst === undefined) return [];
  const { at, pressure, hose, limit } = worst;
  return [
    {
      code: 'hose_over_limit',
      at,
      state,
      value: { value: pressure, dimension: 'pressure' },
      limit: { value: limit, dimension: 'pressure' },
      source: citation(hose, limit === hose.limits?.service_test ? 'limits.service_test' : 'limits.working'),
    },
  ];
}

/** What hose may stand under at most, Pa; undefined where nothing is known of it. */
export function lowestLimit({ limits }: Hose): number | undefined {
  const { working, service_test } = limits ?? {};
  if (working === undefined || service_test === undefined) return working ?? service_test;
  return Math.min(working, service_test);
}

function intakes({ plan, variant }: GrowingLay, { pump }: LaidOut): LimitMet[] {
  if (!pump || !variant.pump) return [];
  const { tank } = variant.pump;
  const floor = tank
    ? { pressure: AT_OPEN_TANK, source: 'water runs into an open tank at the pressure of the air' }
    : intakeFloor(plan);
  if (pump.intake >= floor.pressure - SLACK) return [];
  return [
    {
      code: tank ? 'tank_not_fed' : 'intake_below_floor',
      at: tank ? 'the portable tank' : 'the booster',
      state: 'flowing',
      value: { value: pump.intake, dimension: 'pressure' },
      limit: { value: floor.pressure, dimension: 'pressure' },
      source: floor.source,
    },
  ];
}
