import type { Layout, PumpName } from '../../layout/layout.js';
import type { ApplianceStep, Step } from '../../layout/step.js';
import type { Dimension } from '../../quantity/dimension.js';
import { INSTRUMENTS, type Instrument } from '../../readings/trial-columns.js';
import type { Prior } from '../../statistics/explain.js';
import type { Engine } from './observe.js';

export type CauseKind =
  | 'pump_worn'
  | 'governor_low'
  | 'check_valve'
  | 'suction_blocked'
  | 'orifice_worn'
  | 'instrument_off';

/** One thing that may be wrong, of a size that the readings tell. */
export interface Cause {
  /** `pump_worn a`. */
  id: string;
  kind: CauseKind;
  /** The pump or the instrument. */
  at: string;
  prior: Prior;
  /** What its size is of; `velocity heads` is a bare number on the velocity in `bore`. */
  size: Dimension | 'velocity_heads';
  bore?: number;
  /** The engine with it. */
  engine?(engine: Engine, size: number): Engine;
  /** What an instrument reads with it. */
  read?: { instrument: Instrument; change(value: number, size: number): number };
}

/**
 * How large each may be before anything is read, as a standard deviation: judgement, no source. They are wide on purpose: they
 * decide only between causes that readings cannot tell apart.
 */
const LIKELY = {
  wear: 0.08,
  governor: 0.05,
  checkValve: 15,
  suction: 15,
  orifice: 0.03,
  gauge: 90_000,
  inletGauge: 25_000,
  meter: 0.1,
  tachometer: 0.05,
};
const USUAL_BORE = { discharge: 0.0381, suction: 0.0508 };

const scaled = (value: number, size: number) => value * (1 + size);
const shifted = (value: number, size: number) => value + size;

/** All single causes that the sheet of a layout knows, for the instruments that were read. */
export function causesOf(layout: Layout, instruments: readonly Instrument[], orifices: boolean): Cause[] {
  const pumps: PumpName[] = layout.engine.pumps.b ? ['a', 'b'] : ['a'];
  return [
    ...pumps.flatMap((pump) => [wornPump(pump), lowGovernor(pump), checkValve(layout, pump)]),
    blockedSuction(layout),
    ...(orifices ? [wornOrifice()] : []),
    ...instruments.map(offInstrument),
  ];
}

function wornPump(pump: PumpName): Cause {
  return {
    id: `pump_worn ${pump}`,
    kind: 'pump_worn',
    at: `pump ${pump}`,
    size: 'ratio',
    prior: { deviation: LIKELY.wear, oneSided: true },
    engine: ({ layout, ...rest }, size) => ({ ...rest, layout: withWear(layout, pump, size) }),
  };
}

/** More of the head is gone than the layout says. */
export function withWear(layout: Layout, pump: PumpName, more: number): Layout {
  const { engine } = layout;
  const own = engine.pumps[pump];
  if (own === undefined) return layout;
  const wear = Math.min(0.9, Math.max(0, 1 - (1 - (own.wear ?? 0)) * (1 - more)));
  return { ...layout, engine: { ...engine, pumps: { ...engine.pumps, [pump]: { ...own, wear } } } };
}

function lowGovernor(pump: PumpName): Cause {
  return {
    id: `governor_low ${pump}`,
    kind: 'governor_low',
    at: `pump ${pump}`,
    size: 'ratio',
    prior: { deviation: LIKELY.governor, oneSided: true },
    engine: ({ throttle, ...rest }, size) => ({
      ...rest,
      throttle: { ...throttle, [pump]: throttle[pump] * (1 - Math.min(size, 0.9)) },
    }),
  };
}

function checkValve(layout: Layout, pump: PumpName): Cause {
  const bore = lastBore(layout.engine.plumbing.discharge[pump]) ?? USUAL_BORE.discharge;
  return {
    id: `check_valve ${pump}`,
    kind: 'check_valve',
    at: `pump ${pump}`,
    size: 'velocity_heads',
    bore,
    prior: { deviation: LIKELY.checkValve, oneSided: true },
    engine: ({ layout: before, ...rest }, size) => {
      const { plumbing } = before.engine;
      const steps = [...plumbing.discharge[pump], extraLoss(size, bore, 'discharge')];
      return {
        ...rest,
        layout: withPlumbing(before, { discharge: { ...plumbing.discharge, [pump]: steps } }),
      };
    },
  };
}

function blockedSuction(layout: Layout): Cause {
  const { supply, engine } = layout;
  const drafts = supply.kind === 'draft';
  const steps = drafts ? supply.suction : engine.plumbing.intake;
  const bore = lastBore(steps) ?? lastBore(engine.plumbing.suction.a) ?? USUAL_BORE.suction;
  return {
    id: 'suction_blocked',
    kind: 'suction_blocked',
    at: drafts ? 'the suction hose or its strainer' : 'the tank line or its strainer',
    size: 'velocity_heads',
    bore,
    prior: { deviation: LIKELY.suction, oneSided: true },
    engine: ({ layout: before, ...rest }, size) => {
      const loss = extraLoss(size, bore, 'suction');
      const blocked =
        before.supply.kind === 'draft'
          ? { ...before, supply: { ...before.supply, suction: [...before.supply.suction, loss] } }
          : withPlumbing(before, { intake: [...before.engine.plumbing.intake, loss] });
      return { ...rest, layout: blocked };
    },
  };
}

function wornOrifice(): Cause {
  return {
    id: 'orifice_worn',
    kind: 'orifice_worn',
    at: 'the orifice',
    size: 'ratio',
    prior: { deviation: LIKELY.orifice, oneSided: true },
    engine: ({ orificeWorn, ...rest }, size) => ({ ...rest, orificeWorn: orificeWorn * (1 + size) }),
  };
}

function offInstrument(instrument: Instrument): Cause {
  const byPart = INSTRUMENTS[instrument].dimension !== 'pressure';
  const inlet = instrument.startsWith('inlet');
  const deviation =
    instrument === 'flow'
      ? LIKELY.meter
      : byPart
        ? LIKELY.tachometer
        : inlet
          ? LIKELY.inletGauge
          : LIKELY.gauge;
  return {
    id: `instrument_off ${instrument}`,
    kind: 'instrument_off',
    at: instrument,
    size: byPart ? 'ratio' : 'pressure',
    prior: { deviation, oneSided: false },
    read: { instrument, change: byPart ? scaled : shifted },
  };
}

function withPlumbing(layout: Layout, changed: Partial<Layout['engine']['plumbing']>): Layout {
  const { engine } = layout;
  return { ...layout, engine: { ...engine, plumbing: { ...engine.plumbing, ...changed } } };
}

const lastBore = (steps: readonly Step[]): number | undefined => {
  const pipe = steps.findLast((step) => step.kind === 'pipe' || step.kind === 'hose');
  return pipe?.kind === 'pipe'
    ? pipe.pipe.inside_diameter
    : pipe?.kind === 'hose'
      ? pipe.hose.inside_diameter
      : undefined;
};

function extraLoss(k: number, bore: number, where: string): ApplianceStep {
  return {
    kind: 'appliance',
    appliance: { k: Math.max(0, k), inside_diameter: bore },
    policy: 'engineering',
    label: `what is in the way in the ${where}`,
    modelName: 'an obstruction',
    path: [],
    at: { file: '', line: 0, column: 0 },
  };
}
