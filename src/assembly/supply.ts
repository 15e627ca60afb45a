import { firstBore, strainerOf } from '../layout/bore-rules.js';
import type { Layout, Supply } from '../layout/layout.js';
import { heightOfPressure } from '../physics/elevation.js';
import { HYDRANT_EXPONENT, hydrantResistance } from '../physics/hydrant.js';
import { type LineContext, layLine } from './line.js';
import type { Place } from './network-builder.js';

/** Where the engine's water comes from: the surface, and the place that the intake starts at. */
export interface LaidSupply {
  source: Place;
  start: Place;
  /** Surface of the engine's own tank, which cooling lines and the relief valve run back to. */
  tank: Place;
}

/** Lays the supply. Heights are above the pump inlets; a hydrant and a relay are read on a gauge at that height. */
export function laySupply(layout: Layout, context: LineContext): LaidSupply {
  const tank = context.builder.surface('tank', layout.engine.tank?.outlet_height ?? 0);
  if (layout.supply.kind === 'tank') return { source: tank, start: { ...tank, elevation: 0 }, tank };
  return { ...layWater(layout, layout.supply, context), tank };
}

function layWater(
  layout: Layout,
  supply: Exclude<Supply, { kind: 'tank' }>,
  context: LineContext,
): Omit<LaidSupply, 'tank'> {
  const { builder, site } = context;
  switch (supply.kind) {
    case 'draft': {
      const source = builder.surface('water drafted', -supply.lift);
      let start: Place = source;
      const strainer = strainerOf(layout);
      if (strainer) {
        start = builder.add(context.store.part(strainer, firstBore(supply.suction)), 'draft', start);
      }
      const end = layLine(supply.suction, start, 'draft', context);
      if (end === undefined) throw new TypeError('a suction that ends passed the schema');
      // The suction climbs from the water to the pumps, whether its steps say so or not.
      return { source, start: { ...end, elevation: 0 } };
    }
    case 'hydrant': {
      const source = builder.surface('hydrant', 0, heightOfPressure(supply.static, site.waterDensity));
      const fall =
        supply.static > supply.residual
          ? hydrantResistance({
              staticPressure: supply.static,
              residualPressure: supply.residual,
              flow: supply.flow,
            })
          : 0;
      const resistance = heightOfPressure(fall, site.waterDensity);
      if (resistance === 0) return { source, start: source };
      const start = builder.junction('hydrant outlet', 0);
      const law = {
        kind: 'power' as const,
        resistance,
        exponent: HYDRANT_EXPONENT,
        minor: 0,
        linearBelow: 1e-6,
      };
      const main = { kind: 'hydrant main', name: 'hydrant main', modelName: 'by its flow test', law };
      builder.add({ ...main, path: ['supply', 'hydrant'] }, 'hydrant', source, start);
      return { source, start };
    }
    default: {
      const source = builder.surface('relay', 0, heightOfPressure(supply.pressure, site.waterDensity));
      return { source, start: source };
    }
  }
}
