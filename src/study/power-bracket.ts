import { engineKind, hasPowerData, powerLeft } from '../assembly/engine-power.js';
import { siteOf } from '../assembly/site.js';
import type { EnginePump, TypingAsked } from '../layout/layout.js';
import { standardTemperature } from '../physics/atmosphere.js';
import { carriedSpeed, type Lugging } from '../physics/pump-curve/held-speed.js';
import type { PowerBracket } from './answer.js';
import type { Rig } from './rig.js';
import { verdictHere } from './verdict-here.js';

const LUGGING: readonly Lugging[] = ['constant_power', 'flat_torque'];
/** Ratios of power this near to one carry nothing. */
const ALIKE = 1e-9;

/**
 * Power at the layout's site over power where a pump's curve was measured: at sea level and 59 degF, unless its file says
 * otherwise.
 */
export function powerRatio(rig: Rig, pump: EnginePump): number {
  const site = siteOf(rig.layout.site);
  const { elevation = 0, air_temperature = standardTemperature(0) } = pump.model.tested_at ?? {};
  const there = { elevation, airTemperature: air_temperature };
  return powerLeft(pump.model, site, site.derating) / powerLeft(pump.model, there, site.derating);
}

/**
 * What the verdict becomes where a pump's file does not say what power its engine has: between an engine with power to
 * spare, which loses nothing, and one that was at its limit when its curve was measured. Undefined where every file says,
 * or where the place is no different from that of the test.
 */
export function bracketPower(rig: Rig, typing: TypingAsked): PowerBracket | undefined {
  const { a, b } = rig.layout.engine.pumps;
  const { staging } = rig.layout;
  const used = [
    { name: 'a' as const, pump: staging === 'b' ? undefined : a },
    { name: 'b' as const, pump: staging === 'a' ? undefined : b },
  ].flatMap(({ name, pump }) =>
    pump && !hasPowerData(pump.model) ? [{ name, pump, ratio: powerRatio(rig, pump) }] : [],
  );
  const moved = used.filter(({ ratio }) => Math.abs(ratio - 1) > ALIKE);
  if (moved.length === 0) return undefined;
  const cases = LUGGING.map((lugging) => {
    const throttle = { ...rig.throttle };
    for (const { name, ratio } of moved) throttle[name] *= carriedSpeed(ratio, lugging);
    const here = verdictHere(rig.with(rig.layout, throttle), typing);
    return { lugging, ...here };
  });
  return {
    pumps: moved.map(({ name, pump, ratio }) => ({
      name: `pump ${name}`,
      ratio,
      aspiration:
        engineKind(pump.model).aspiration === 'turbo' ? ('turbocharged' as const) : ('natural' as const),
    })),
    cases,
  };
}
