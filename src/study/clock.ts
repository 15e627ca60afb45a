import type { AssembleOptions } from '../assembly/assemble.js';
import type { AssembledPump } from '../assembly/assembly.js';
import type { OperatingPoint } from '../assembly/operating-point.js';
import { citation } from '../catalogue/citation.js';
import type { Layout } from '../layout/layout.js';
import { impossibilities } from '../limits/impossible.js';
import { fromUnit } from '../quantity/format.js';
import { totalFlow } from './always-run.js';
import type { Statement } from './answer.js';
import { assumptions } from './assumptions.js';
import type { ClockAnswer, FuelClock, ShuttleClock, TankClock } from './clock-answer.js';
import { gatedCautions } from './gated.js';
import { governed } from './governor.js';
import { laidSteps } from './lay-stores.js';
import { shaftPower } from './pump-answer.js';
import { Rig } from './rig.js';
import {
  firstGap,
  SHUTTLE_HORIZON,
  shuttleRound,
  sustainedFlow,
  tenderLoad,
  tendersNeeded,
} from './shuttle.js';
import { solverReport } from './solver-report.js';
import { drawnFrom } from './supply.js';
import { tankClock } from './tank-clock.js';

/**
 * Fuel burnt for a power at the shaft, kg a joule and kg a cubic metre. Trade knowledge: 0.5 lb of gasoline or 0.4 lb of
 * diesel for each horsepower and hour; 6.1 and 7.1 lb a gallon (common practice, no source).
 */
const BURN = {
  gasoline: { each: 0.5, weighs: 6.1 },
  diesel: { each: 0.4, weighs: 7.1 },
} as const;
const BURN_SOURCE =
  '0.5 lb of gasoline at 6.1 lb/gal, or 0.4 lb of diesel at 7.1 lb/gal, for each horsepower and hour (common practice, no source)';

export interface ClockOptions {
  nozzleState?: AssembleOptions['nozzleState'];
}

/** How long do water and fuel last, and what do the tenders sustain? Throws NoSteadyAnswer where nothing flows steadily. */
export async function clockOf(layout: Layout, options: ClockOptions = {}): Promise<ClockAnswer> {
  const rig = await Rig.of(layout);
  const point = governed(rig, layout.staging, options.nozzleState);
  const drawn = drawnFrom(point, point.assembly.source.node);
  const tank = tankClock(layout, point);
  const fuel = point.assembly.pumps.map((pump) => fuelClock(layout, point, pump));
  return {
    question: 'clock',
    title: layout.title,
    engine: layout.engine.name,
    site: point.assembly.site,
    staging: layout.staging,
    impossible: impossibilities(point),
    totalFlow: totalFlow(point),
    tank,
    shuttle: shuttleClock(layout, drawn, tank),
    fuel,
    firstRefuelling: firstEmpty(fuel),
    cautions: gatedCautions({
      layout,
      cases: [{ kind: 'laid', when: 'with the lay as it stands', point }],
      tank,
    }),
    assumptions: [...clockAssumptions(layout), ...assumptions(layout, point.assembly.site)],
    solver: solverReport(point),
  };
}

export function shuttleClock(
  layout: Layout,
  drawn: number,
  tank: TankClock | undefined,
): ShuttleClock | undefined {
  const { shuttle } = layout;
  if (shuttle === undefined) return undefined;
  const stored = tank?.usable ?? 0;
  const room = (tank ? tank.capacity - tank.reserve : 0) + (shuttle.dump_tank ?? 0);
  return {
    tenders: shuttle.tenders,
    load: tenderLoad(shuttle),
    ...shuttleRound(shuttle),
    byFormula: shuttle.speed === undefined,
    sustained: sustainedFlow(shuttle),
    drawn,
    needed: tendersNeeded(shuttle, drawn),
    gap: firstGap(shuttle, drawn, stored, room),
    horizon: SHUTTLE_HORIZON,
    source: 'tender-shuttle formula of fire services, 0.9 of the tank a round (from memory)',
  };
}

function fuelClock(layout: Layout, point: OperatingPoint, pump: AssembledPump): FuelClock {
  const { model, name } = pump;
  const onBoard = fuelTank(layout, pump);
  const known = burnOf(point, pump);
  const lasts = onBoard === undefined || known === undefined ? undefined : onBoard / known.burn;
  return {
    pump: name,
    basis: known?.basis ?? 'rated',
    burn: known?.burn,
    onBoard,
    lasts,
    source: known?.source ?? (model.power ? citation(model, 'power') : 'not stated'),
  };
}

/** The burn that the pump's maker states, at rated power whatever the load, so that it errs early; else by the power drawn. */
function burnOf(
  point: OperatingPoint,
  pump: AssembledPump,
): { burn: number; basis: FuelClock['basis']; source: string } | undefined {
  const { power } = pump.model;
  if (power?.burn !== undefined)
    return { burn: power.burn, basis: 'rated', source: citation(pump.model, 'power') };
  const shaft = shaftPower(point, pump);
  if (shaft === undefined || shaft <= 0 || !power?.fuel) return undefined;
  const { each, weighs } = BURN[power.fuel];
  const gallonsAnHour = ((shaft / fromUnit(1, 'hp')) * each) / weighs;
  return { burn: fromUnit(gallonsAnHour, 'gal/h'), basis: 'shaft_power', source: BURN_SOURCE };
}

function fuelTank(layout: Layout, { name, booster }: AssembledPump): number | undefined {
  if (booster) {
    const step = laidSteps(layout).find((one) => one.kind === 'pump' && one.label === name);
    return step?.kind === 'pump' ? step.fuel_tank : undefined;
  }
  const { a, b } = layout.engine.pumps;
  return (name === 'pump b' ? b : a)?.fuel_tank;
}

function firstEmpty(fuel: readonly FuelClock[]): ClockAnswer['firstRefuelling'] {
  const known = fuel.flatMap(({ pump, lasts }) => (lasts === undefined ? [] : [{ pump, at: lasts }]));
  return known.sort((a, b) => a.at - b.at)[0];
}

function clockAssumptions(layout: Layout): Statement[] {
  const { engine, shuttle } = layout;
  const statements: Statement[] = [];
  if (layout.supply.kind === 'tank' && engine.tank) {
    const { outlet_height, depth = Math.max(0, outlet_height) } = engine.tank;
    statements.push({
      template:
        engine.tank.depth === undefined
          ? 'The surface of the tank is taken to fall {depth}, to the height of the pump inlets, as its depth is not stated'
          : 'The surface of the tank falls {depth} from full to empty, evenly',
      values: { depth: { value: depth, dimension: 'length' } },
      source: 'a tank of upright walls (common practice, no source)',
    });
  }
  if (shuttle)
    statements.push(
      {
        template: 'The distance of the shuttle is one way, and each leg is reckoned by itself',
        source: 'the formula is also applied to the round trip, which makes more of the same tenders',
      },
      {
        template:
          'One tender at a time fills and one dumps; they start evenly spaced, and wait where the tanks are full',
        source: 'choice of this program',
      },
    );
  return statements;
}
