import type { AssembledPump } from '../assembly/assembly.js';
import type { OperatingPoint } from '../assembly/operating-point.js';
import { STANDSTILL } from '../assembly/standstill.js';
import { npshAvailable } from '../assembly/suction-head.js';
import type { HazardCase } from '../caution/hazard.js';
import type { Layout } from '../layout/layout.js';
import { USUAL_DIAL } from '../limits/gauge-limit.js';
import { type HoseLimit, settingLimit } from '../limits/hose-limit.js';
import { hoseLoads } from '../limits/hose-load.js';
import { boilingPressure, whyImpossible } from '../limits/impossible.js';
import { pumpLoads } from '../limits/pump-limit.js';
import { type SuctionBasis, suctionNeed } from '../limits/suction-need.js';
import { unknownHose } from '../limits/unknown-hose.js';
import type { Dimension } from '../quantity/dimension.js';
import type { AxleCase, AxlesAnswer, LedgerLine } from './engine-answer.js';
import type { PressureControl } from './pressure-control.js';
import type { SuctionAnswer } from './suction.js';

export interface LedgerFacts {
  /** The operating point first. */
  cases: readonly HazardCase[];
  axles?: AxlesAnswer;
  suction?: SuctionAnswer;
  control?: PressureControl;
}

/** Every limit in the rig with its load at the operating point and in the worst case, tightest first. */
export function ledgerOf(all: LedgerFacts): LedgerLine[] {
  // A state that cannot be loads nothing but the suction that it is short of.
  const facts = { ...all, cases: all.cases.filter(({ point }) => whyImpossible(point) === undefined) };
  const lines = [
    ...(facts.cases.length > 0
      ? [...pumpLines(facts), ...hoseLines(facts), ...gaugeLines(facts), ...reliefLines(facts)]
      : []),
    ...suctionLines(all),
    ...axleLines(facts),
  ];
  return lines.sort((a, b) => a.margin - b.margin);
}

interface Load {
  case: HazardCase;
  load: number;
  allowed: number;
}

interface Limit {
  code: string;
  limit: string;
  at: string;
  dimension: Dimension;
  atLeast?: boolean;
  source: string;
}

const marginOf = (load: number, allowed: number, atLeast = false): number =>
  (atLeast ? load - allowed : allowed - load) / allowed;

/** The line of a limit from its loads in every case that has one. */
function lineOf(limit: Limit, loads: readonly Load[], working: HazardCase): LedgerLine[] {
  if (loads.length === 0) return [];
  const { code, at, dimension, source, atLeast = false } = limit;
  const worst = loads.reduce((kept, one) =>
    marginOf(one.load, one.allowed, atLeast) < marginOf(kept.load, kept.allowed, atLeast) ? one : kept,
  );
  return [
    {
      code,
      limit: limit.limit,
      at,
      allowed: { value: worst.allowed, dimension },
      atLeast,
      operating: working.kind === 'operating' ? loads.find((one) => one.case === working)?.load : undefined,
      worst: worst.load,
      worstWhen: worst.case.when,
      margin: marginOf(worst.load, worst.allowed, atLeast),
      source,
    },
  ];
}

function pumpLines({ cases }: LedgerFacts): LedgerLine[] {
  const [working] = cases;
  const names = [...new Set(cases.flatMap(({ point }) => point.assembly.pumps.map(({ name }) => name)))];
  const stated = 'limit stated for the pump';
  return names.flatMap((name) => {
    const loads = (
      of: (point: OperatingPoint, pump: AssembledPump) => [number, number | undefined] | undefined,
    ) =>
      cases.flatMap((one): Load[] => {
        const pump = one.point.assembly.pumps.find((each) => each.name === name);
        const [load, allowed] = (pump && of(one.point, pump)) ?? [];
        return load === undefined || allowed === undefined || allowed <= 0
          ? []
          : [{ case: one, load, allowed }];
      });
    const limit = (code: string, what: string, dimension: Dimension, source: string): Limit => ({
      code,
      limit: what,
      at: name,
      dimension,
      source,
    });
    return [
      ...lineOf(limit('casing_over_limit', 'casing', 'pressure', stated), loads(sideOf('casing')), working),
      ...lineOf(
        limit('inlet_over_limit', 'inlet and seal', 'pressure', stated),
        loads(sideOf('inlet')),
        working,
      ),
      ...lineOf(
        limit('power_at_limit', 'engine power', 'power', 'rated power less what altitude and heat take'),
        loads(powerOf),
        working,
      ),
    ];
  });
}

const sideOf =
  (side: 'casing' | 'inlet') =>
  (point: OperatingPoint, pump: AssembledPump): [number, number | undefined] | undefined => {
    const found = pumpLoads(point, pump).find((one) => one.side === side);
    // No water comes to it, and nothing stands there.
    return found && found.pressure > boilingPressure(point) ? [found.pressure, found.limit] : undefined;
  };

/** The power that a pump takes, which its engine cannot be asked more of than it has. */
function powerOf(point: OperatingPoint, pump: AssembledPump): [number, number] | undefined {
  const { held, link } = pump;
  if (held === undefined) return undefined;
  const speed = point.speedOf(pump);
  const available = held.availableAt(speed);
  return [Math.min(held.power.at(point.flow(link), speed), available), available];
}

function suctionLines({ cases, suction }: LedgerFacts): LedgerLine[] {
  const names = new Set(cases.flatMap(({ point }) => point.assembly.pumps.map(({ name }) => name)));
  return [...names].flatMap((name) => suctionLine(name, cases, suction));
}

/** As laid, in every case, and with the tank drawn down. */
function suctionLine(
  name: string,
  cases: readonly HazardCase[],
  suction: SuctionAnswer | undefined,
): LedgerLine[] {
  const [working] = cases;
  const loads: Load[] = [];
  let basis: SuctionBasis = 'file';
  for (const one of cases) {
    const pump = one.point.assembly.pumps.find((each) => each.name === name);
    if (pump === undefined || pump.booster) continue;
    const need = suctionNeed(one.point, pump);
    // A pump that moves nothing needs no head for it.
    if (one.point.flow(pump.link) <= STANDSTILL) continue;
    basis = need.basis;
    if (need.head > 0) loads.push({ case: one, load: npshAvailable(one.point, pump), allowed: need.head });
  }
  const drawn = suction?.tank.find(({ level, pump }) => level < 1 && pump === name);
  const there = suction?.pumps.find(({ pump }) => pump === name);
  if (drawn?.margin !== undefined && there && there.needed > 0) {
    const when = 'with the tank drawn down at the required flow';
    loads.push({
      case: { ...working, when },
      load: Math.max(0, there.needed + drawn.margin),
      allowed: there.needed,
    });
  }
  return lineOf(
    {
      code: 'suction_short',
      limit: 'suction head',
      at: name,
      dimension: 'length',
      atLeast: true,
      source:
        basis !== 'lift_practice'
          ? 'suction head that the file says the pump needs'
          : 'NWCG Firefighter Math 3.5: two thirds of the theoretical lift',
    },
    loads,
    working,
  );
}

/** One line for each kind of hose, by the length of it that is nearest its limit. */
function hoseLines({ cases }: LedgerFacts): LedgerLine[] {
  const [working] = cases;
  const byModel = new Map<string, { loads: Load[]; at: string; worst: number; limit: HoseLimit }>();
  for (const one of cases) {
    for (const { element, hose, highest: load } of hoseLoads(one.point)) {
      const limit = settingLimit(hose);
      // Where no water comes nothing stands.
      if (limit === undefined || load <= boilingPressure(one.point)) continue;
      const known = byModel.get(element.modelName) ?? { loads: [], at: '', worst: -1, limit };
      const same = known.loads.find((each) => each.case === one);
      if (same) same.load = Math.max(same.load, load);
      else known.loads.push({ case: one, load, allowed: limit.pressure });
      if (load > known.worst) Object.assign(known, { worst: load, at: element.name });
      byModel.set(element.modelName, known);
    }
  }
  return [...byModel.values()].flatMap(({ loads, at, limit }) =>
    lineOf(
      {
        code: 'hose_near_limit',
        limit: `hose, ${limit.what}`,
        at,
        dimension: 'pressure',
        source: limit.source,
      },
      loads,
      working,
    ),
  );
}

/** Hose, laid and carried, of which nothing says what it bears: said, and never taken as no limit. */
export function limitsNotKnown(layout: Layout, cases: readonly HazardCase[]): string[] {
  return unknownHose(
    layout,
    cases.map(({ point }) => point),
  );
}

function gaugeLines({ cases }: LedgerFacts): LedgerLine[] {
  const [working] = cases;
  const names = [...new Set(cases.flatMap(({ point }) => point.assembly.gauges.map(({ name }) => name)))];
  const read = cases.map((one) => ({
    one,
    gauges: new Map(one.point.assembly.gauges.toReversed().map((gauge) => [gauge.name, gauge])),
  }));
  return names.flatMap((name) => {
    let stated = true;
    const loads = read.flatMap(({ one, gauges }): Load[] => {
      const gauge = gauges.get(name);
      if (gauge === undefined) return [];
      // No water comes to it, and there is nothing to read.
      if (one.point.gaugePressure(gauge.place) <= boilingPressure(one.point)) return [];
      stated = gauge.range !== undefined;
      return [{ case: one, load: one.point.gaugePressure(gauge.place), allowed: gauge.range ?? USUAL_DIAL }];
    });
    const source = stated
      ? 'range stated for the gauge'
      : 'a common dial, 0 to 400 psi (common practice, no source)';
    return lineOf(
      { code: 'gauge_past_range', limit: 'gauge range', at: name, dimension: 'pressure', source },
      loads,
      working,
    );
  });
}

/** The setting of the relief valve or governor against the weakest part, and the header against the setting. */
function reliefLines({ cases, control }: LedgerFacts): LedgerLine[] {
  const [working] = cases;
  const { device, highest } = control ?? {};
  const lines: LedgerLine[] = [];
  if (device && highest) {
    const at = device.kind === 'relief' ? 'the relief valve' : 'the governor';
    const { source } = highest;
    lines.push(
      ...lineOf(
        { code: 'relief_above_hose', limit: `setting, by ${highest.by}`, at, dimension: 'pressure', source },
        [{ case: { ...working, when: 'as it is set' }, load: device.set, allowed: highest.pressure }],
        working,
      ),
    );
  }
  const { assembly, solution } = working.point;
  if (device?.kind !== 'relief') return lines;
  for (const { name, link } of assembly.reliefs) {
    const valve = assembly.network.links[link];
    const { elevation } = assembly.network.nodes[valve.from];
    const header = working.point.pressureOf(solution.heads[valve.from] - elevation);
    lines.push(
      ...lineOf(
        {
          code: 'relief_opens',
          // With the outlets shut it is there to open, and what is left of the setting then limits nothing.
          limit: `relief setting, which is to stay shut ${working.when}`,
          at: name === 'relief valve' ? 'the relief valve' : name,
          dimension: 'pressure',
          source: 'setting stated in the layout',
        },
        [{ case: working, load: header, allowed: device.set }],
        working,
      ),
    );
  }
  return lines;
}

function axleLines({ axles }: LedgerFacts): LedgerLine[] {
  if (axles === undefined) return [];
  const [full] = axles.cases;
  const source = 'rating stated in the layout';
  return (['front', 'rear', 'gross'] as const).flatMap((which) => {
    const allowed = axles.ratings[which];
    const loads = axles.cases.flatMap((one) => {
      const load = one[which] ?? leastOf(one, which);
      return load === undefined ? [] : [{ one, load }];
    });
    if (allowed === undefined || loads.length === 0) return [];
    const worst = loads.reduce((kept, each) => (each.load > kept.load ? each : kept));
    return [
      {
        code: which === 'gross' ? 'over_gross_rating' : 'axle_over_rating',
        limit: which === 'gross' ? 'gross weight' : 'axle',
        at: which === 'gross' ? 'the truck' : `the ${which} axle`,
        allowed: { value: allowed, dimension: 'mass' as const },
        atLeast: false,
        operating: full[which],
        worst: worst.load,
        worstWhen: axleCaseName(worst.one),
        margin: (allowed - worst.load) / allowed,
        ...(axles.leftOut.length > 0 && { leftOut: axles.leftOut }),
        ...(which !== 'gross' && full[which] === undefined && { unplaced: axles.unplaced }),
        source,
      },
    ];
  });
}

/** What an axle carries at least, where some weight has no place. */
function leastOf(one: AxleCase, which: 'front' | 'rear' | 'gross'): number | undefined {
  if (which === 'gross') return undefined;
  return which === 'front' ? one.frontAtLeast : one.rearAtLeast;
}

export function axleCaseName({ tank, crew }: { tank: number; crew: boolean }): string {
  const level = tank === 1 ? 'full' : tank === 0 ? 'empty' : 'half full';
  return `with the tank ${level}, ${crew ? 'crew aboard' : 'no crew'}`;
}
