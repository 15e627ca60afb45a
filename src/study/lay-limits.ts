import type { Element } from '../assembly/network-builder.js';
import { shortOfLeast } from '../assembly/nozzle-needs.js';
import type { Progressive } from '../layout/progressive.js';
import { bearingLimit, type HoseLimit, settingLimit } from '../limits/hose-limit.js';
import { hoseLoads } from '../limits/hose-load.js';
import { type Impossibility, whyImpossible } from '../limits/impossible.js';
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
    ...cannotBe(laid),
    ...intakes(lay, laid),
    ...tanksInLine(laid),
    ...nozzlesShort(laid),
    ...hoseOver(laid, 'flowing'),
    ...hoseOver(laid, 'shut'),
  ];
}

/** A state that cannot be, flowing or with every nozzle shut: no figure of it says how well it does. */
function cannotBe({ point, shut }: LaidOut): LimitMet[] {
  const stop = (state: LimitMet['state'], why: Impossibility | undefined): LimitMet[] =>
    why
      ? [
          {
            code: 'cannot_be',
            at: why.at,
            state,
            value: why.value,
            limit: why.limit,
            source: why.source,
            why,
          },
        ]
      : [];
  return [...stop('flowing', whyImpossible(point)), ...stop('shut', whyImpossible(shut))];
}

function nozzlesShort({ point, nozzles }: LaidOut): LimitMet[] {
  const short = nozzles.flatMap((nozzle): LimitMet[] => {
    const found = shortOfLeast(point, nozzle);
    if (found === undefined) return [];
    return [
      {
        code: 'nozzle_below_minimum',
        at: nozzle.name,
        state: 'flowing',
        value: { value: found.pressure, dimension: 'pressure' },
        limit: { value: found.least.pressure, dimension: 'pressure' },
        source: found.least.source,
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
function hoseOver(laid: LaidOut, state: LimitMet['state'], limitOf = bearingLimit): LimitMet[] {
  const point = state === 'shut' ? laid.shut : laid.point;
  let worst: { at: string; pressure: number; limit: HoseLimit } | undefined;
  for (const { element, hose, highest: pressure } of hoseLoads(point, laid.hose as Element[])) {
    const limit = limitOf(hose);
    if (limit === undefined || pressure <= limit.pressure + SLACK) continue;
    if (worst === undefined || pressure / limit.pressure > worst.pressure / worst.limit.pressure)
      worst = { at: element.name, pressure, limit };
  }
  if (worst === undefined) return [];
  const { at, pressure, limit } = worst;
  return [
    {
      code: 'hose_over_limit',
      at,
      state,
      value: { value: pressure, dimension: 'pressure' },
      limit: { value: limit.pressure, dimension: 'pressure' },
      source: limit.source,
    },
  ];
}

/** Hose over what a throttle or a governor may be set to for it, flowing or shut: the rule of every advice on a setting. */
export function overSetting(laid: LaidOut): LimitMet[] {
  return [...hoseOver(laid, 'flowing', settingLimit), ...hoseOver(laid, 'shut', settingLimit)];
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
