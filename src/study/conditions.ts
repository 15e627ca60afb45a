import type { EnginePump, Layout } from '../layout/layout.js';

/** What may differ from the layout: another place, another day, another age, another level of the tank. */
export interface Conditions {
  /** m */
  elevation?: number;
  /** K */
  airTemperature?: number;
  /** K */
  waterTemperature?: number;
  /** Part of the head that both pumps have lost. */
  wear?: number;
  /** Part of the tank that is full. */
  tankLevel?: number;
}

/** The layout under other conditions; nothing else of it changes, and the layout itself does not. */
export function under(layout: Layout, conditions: Conditions): Layout {
  const { site, engine } = layout;
  const {
    elevation = site.elevation,
    airTemperature = site.air_temperature,
    waterTemperature = site.water_temperature,
    wear,
    tankLevel = 1,
  } = conditions;
  // The same site is kept as it is, so that what was made for it serves again.
  const moved =
    elevation !== site.elevation ||
    airTemperature !== site.air_temperature ||
    waterTemperature !== site.water_temperature;
  const worn = (pump: EnginePump): EnginePump => (wear === undefined ? pump : { ...pump, wear });
  const { tank, pumps } = engine;
  return {
    ...layout,
    site: moved
      ? { ...site, elevation, air_temperature: airTemperature, water_temperature: waterTemperature }
      : site,
    engine: {
      ...engine,
      pumps: { a: worn(pumps.a), ...(pumps.b && { b: worn(pumps.b) }) },
      tank: tank && {
        ...tank,
        outlet_height: tank.outlet_height - (1 - tankLevel) * tankDepth(tank),
      },
    },
  };
}

/**
 * How far the water falls as a tank empties, m: as stated, else to the height of the pump inlets.
 */
export function tankDepth(tank: NonNullable<Layout['engine']['tank']>): number {
  return tank.depth ?? Math.max(0, tank.outlet_height);
}
