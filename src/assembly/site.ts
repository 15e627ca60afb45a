import type { DERATINGS } from '../layout/schema/layout.js';
import { standardPressure } from '../physics/atmosphere.js';
import { kinematicViscosity, vapourPressure, waterDensity } from '../physics/water.js';

/** The water and air of a site, SI; pressures absolute. */
export type Derating = (typeof DERATINGS)[number];

export interface Site {
  elevation: number;
  airTemperature: number;
  waterTemperature: number;
  waterDensity: number;
  waterViscosity: number;
  vapourPressure: number;
  atmosphericPressure: number;
  /** Rule by which engines lose power here. */
  derating: Derating;
}

/** Works out what a site's height and temperatures mean for the water. */
export function siteOf(given: {
  elevation: number;
  air_temperature: number;
  water_temperature: number;
  derating: Derating;
}): Site {
  return {
    elevation: given.elevation,
    airTemperature: given.air_temperature,
    waterTemperature: given.water_temperature,
    waterDensity: waterDensity(given.water_temperature),
    waterViscosity: kinematicViscosity(given.water_temperature),
    vapourPressure: vapourPressure(given.water_temperature),
    atmosphericPressure: standardPressure(given.elevation),
    derating: given.derating,
  };
}
