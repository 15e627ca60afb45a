import type { Throttle } from '../../assembly/engine.js';
import type { OperatingPoint } from '../../assembly/operating-point.js';
import type { TypingTestOrifice } from '../../catalogue/schema/typing.js';
import type { Layout, Staging } from '../../layout/layout.js';
import type { Instrument } from '../../readings/trial-columns.js';
import { deliveries } from '../delivery.js';
import { type Refusal, refusalOf } from '../refusal.js';
import type { Rig } from '../rig.js';
import { readTestOrifice } from '../test-orifice.js';

/** How the engine stands for one reading: its staging, and what hangs on its outlet. */
export interface SetUp {
  staging: Staging;
  /** Bore of the orifice, m; undefined with the outlets shut. */
  orifice?: number;
}

/** The engine as one explanation has it. */
export interface Engine {
  layout: Layout;
  throttle: Throttle;
  /** Bore of every orifice over what is stamped on it. */
  orificeWorn: number;
}

/** What every instrument would read. */
export type Observed = Partial<Record<Instrument, number>>;

/** The gauge of the layout that the panel's column is: one of that name, or the only one there is. */
function panelOf(state: OperatingPoint) {
  const { gauges } = state.assembly;
  return gauges.find(({ name }) => name === 'panel') ?? (gauges.length === 1 ? gauges[0] : undefined);
}

/**
 * What the instruments read in a set-up; nothing where that state cannot be, and why not. Throws NoSteadyAnswer where there is none.
 */
export function observe(
  rig: Rig,
  { layout, throttle, orificeWorn }: Engine,
  setUp: SetUp,
  plate: TypingTestOrifice,
): { observed: Observed; refusal?: Refusal } {
  const [delivery] = deliveries(rig.with(layout, throttle), setUp.staging);
  delivery.drawFrom(undefined);
  const through =
    setUp.orifice === undefined
      ? undefined
      : readTestOrifice(delivery, { ...plate, bore: setUp.orifice * orificeWorn });
  const state = through ? through.state : delivery.atRest();
  const refusal = through ? through.refusal : refusalOf(delivery.atRest());
  if (state === undefined || refusal) return { observed: {}, refusal };
  const panel = panelOf(state);
  const observed: Observed = {
    ...(through && { tee: through.reading, flow: through.flow }),
    ...(panel && { panel: state.gaugePressure(panel.place) }),
  };
  for (const pump of state.assembly.pumps) {
    const id = pump.name === 'pump a' ? 'a' : pump.name === 'pump b' ? 'b' : undefined;
    if (pump.booster || id === undefined) continue;
    observed[`discharge ${id}`] = state.gaugePressure(pump.discharge);
    observed[`inlet ${id}`] = state.gaugePressure(pump.inlet);
    if (pump.model.rated_speed !== undefined)
      observed[`speed ${id}`] = pump.model.rated_speed * state.speedOf(pump);
  }
  return { observed };
}
