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

/**
 * Whether two layouts make the same network but for what their pumps are driven by and how worn they are: the height of the place
 * and its air change the engines alone, and a gauge reads over the air of its place.
 */
export function samePlumbing(one: Layout, other: Layout): boolean {
  const [a, b] = [one.engine, other.engine];
  return (
    one.site.water_temperature === other.site.water_temperature &&
    one.supply === other.supply &&
    one.lay === other.lay &&
    one.appliance_policy === other.appliance_policy &&
    a.plumbing === b.plumbing &&
    a.outlets === b.outlets &&
    a.relief === b.relief &&
    a.tank?.outlet_height === b.tank?.outlet_height &&
    a.pumps.a.model === b.pumps.a.model &&
    a.pumps.b?.model === b.pumps.b?.model
  );
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
