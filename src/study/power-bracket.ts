import { engineKind, hasPowerData, powerLeft } from '../assembly/engine-power.js';
import { siteOf } from '../assembly/site.js';
import type { EnginePump, PumpName, TypingAsked } from '../layout/layout.js';
import { standardTemperature } from '../physics/atmosphere.js';
import { carriedSpeed, type Lugging } from '../physics/pump-curve/held-speed.js';
import type { PowerBracket } from './answer.js';
import { verdictHere } from './judge.js';
import type { Rig } from './rig.js';

/** How an engine at its limit may lose speed, the one that loses less first. */
export const LUGGING: readonly Lugging[] = ['constant_power', 'flat_torque'];
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

interface Unknown {
  name: PumpName;
  pump: EnginePump;
  ratio: number;
}

/** Pumps at work whose files do not say what power their engines have, where the place leaves them more or less of it. */
function movedPumps(rig: Rig): Unknown[] {
  const { staging, engine } = rig.layout;
  return (['a', 'b'] as const).flatMap((name) => {
    const pump = engine.pumps[name];
    if (pump === undefined || staging === (name === 'a' ? 'b' : 'a') || hasPowerData(pump.model)) return [];
    const ratio = powerRatio(rig, pump);
    return Math.abs(ratio - 1) > ALIKE ? [{ name, pump, ratio }] : [];
  });
}

/** Whether the verdict at a rig's place rests on power that no file gives. */
export function restsOnPower(rig: Rig): boolean {
  return movedPumps(rig).length > 0;
}

/** The rig with every engine of unknown power as it runs if it was at its limit when its curve was measured. */
export function atItsLimit(rig: Rig, lugging: Lugging): Rig {
  const throttle = { ...rig.throttle };
  for (const { name, ratio } of movedPumps(rig)) throttle[name] *= carriedSpeed(ratio, lugging);
  return rig.with(rig.layout, throttle);
}

/**
 * What the verdict becomes where a pump's file does not say what power its engine has: between an engine with power to
 * spare, which loses nothing, and one that was at its limit when its curve was measured. Undefined where every file says,
 * or where the place is no different from that of the test.
 */
export function bracketPower(rig: Rig, typing: TypingAsked): PowerBracket | undefined {
  const moved = movedPumps(rig);
  if (moved.length === 0) return undefined;
  return {
    pumps: moved.map(({ name, pump, ratio }) => ({
      name: `pump ${name}`,
      ratio,
      aspiration:
        engineKind(pump.model).aspiration === 'turbo' ? ('turbocharged' as const) : ('natural' as const),
    })),
    cases: LUGGING.map((lugging) => ({ lugging, ...verdictHere(atItsLimit(rig, lugging), typing) })),
  };
}
