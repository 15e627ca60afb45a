import type { Pump } from '../catalogue/schema/pump.js';
import { standardPressure } from '../physics/atmosphere.js';
import {
  type Aspiration,
  altitudeDerating,
  type Fuel,
  temperatureDerating,
} from '../physics/engine-derating.js';
import { BrakePower } from '../physics/pump-curve/brake-power.js';
import type { PumpCurve } from '../physics/pump-curve/curve.js';
import { HeldSpeed } from '../physics/pump-curve/held-speed.js';
import { saePowerLeft } from '../physics/sae-j1349.js';
import type { Derating, Site } from './site.js';

/** Highest place that a derating rule is read to, m. */
const HIGHEST = 6000;

/** What an engine is where its file does not say: the one that loses most, and the fuel of small pumps. */
const USUAL: { aspiration: Aspiration; fuel: Fuel } = { aspiration: 'natural', fuel: 'gasoline' };

export function engineKind(pump: Pump): { aspiration: Aspiration; fuel: Fuel } {
  const { aspiration, fuel = USUAL.fuel } = pump.power ?? {};
  return { aspiration: aspiration === 'turbocharged' ? 'turbo' : USUAL.aspiration, fuel };
}

/** Part of a pump's rated engine power that a place leaves it, by a named rule. */
export function powerLeft(
  pump: Pump,
  place: { elevation: number; airTemperature: number },
  rule: Derating,
): number {
  const { aspiration, fuel } = engineKind(pump);
  const elevation = Math.min(place.elevation, HIGHEST);
  switch (rule) {
    case 'none':
      return 1;
    case 'sae_j1349':
      // The air is taken as dry: no moisture is given, and what there is takes a part in a hundred or so off its pressure.
      return saePowerLeft(standardPressure(elevation), place.airTemperature, aspiration, fuel);
    default:
      return (
        altitudeDerating(elevation, aspiration) * temperatureDerating(place.airTemperature, aspiration, fuel)
      );
  }
}

/** Whether a pump's file tells what power its engine has and what the pump takes of it. */
export function hasPowerData(pump: Pump): boolean {
  return pump.power !== undefined && (pump.efficiency?.some(([flow]) => flow > 0) ?? false);
}

/** What the engine of a pump lets it hold at a site; undefined where its file has not both engine power and efficiency. */
export function heldSpeedOf(pump: Pump, unworn: PumpCurve, site: Site): HeldSpeed | undefined {
  if (!hasPowerData(pump) || !pump.power || !pump.efficiency) return undefined;
  const demand = new BrakePower(unworn, pump.efficiency, site.waterDensity);
  const available = pump.power.rated * powerLeft(pump, site, site.derating);
  return new HeldSpeed(demand, available, pump.power.lugging ?? 'constant_power');
}
