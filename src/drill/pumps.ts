import type { Drafting, Setting } from './draft.js';
import { figure, worked } from './print.js';
import type { CrossCheck, PrintedUnit } from './problem.js';
import type { Draw } from './random.js';
import type { SquarePump } from './solver/two-pumps.js';

/** A small high-pressure pump of our own invention: round figures of shutoff pressure and fall. */
export function drawPump(
  draw: Draw,
  setting: Setting,
  staging: 'parallel' | 'series' = 'parallel',
): SquarePump {
  // Two in series stay below the 600 psi that the casings of such pumps bear.
  if (staging === 'series')
    return setting.units === 'us'
      ? { shutoff: draw.stepped(200, 290, 10), fall: draw.stepped(60, 150, 10) }
      : { shutoff: draw.stepped(1400, 2000, 50), fall: draw.stepped(30, 70, 5) };
  return setting.units === 'us'
    ? { shutoff: draw.stepped(300, 420, 10), fall: draw.stepped(100, 220, 10) }
    : { shutoff: draw.stepped(2100, 2900, 50), fall: draw.stepped(50, 100, 5) };
}

/** The same pump, worn or weaker by a part of its shutoff pressure. */
export function weaker(
  pump: SquarePump,
  draw: Draw,
  setting: Setting,
  least: number,
  most: number,
): SquarePump {
  const step = setting.units === 'us' ? 5 : 25;
  const lost = step * Math.round((pump.shutoff * draw.whole(least, most)) / 100 / step);
  return { shutoff: pump.shutoff - lost, fall: pump.fall };
}

/** The largest flow at which a pump is still on a sound part of its curve: 35 % of its shutoff pressure left. */
export function runout(pump: SquarePump): number {
  return 100 * Math.sqrt((0.65 * pump.shutoff) / pump.fall);
}

export function pressureAt(pump: SquarePump, flow: number): number {
  return pump.shutoff - pump.fall * (flow / 100) ** 2;
}

/** Gives a pump's curve as `S` and `b`, and says it: shutoff, and what is lost at a flow of 100. */
export function givePump(d: Drafting, pump: SquarePump, tag = '', name = 'pump'): string {
  const { unit } = d.setting;
  const s = d.give(`S${tag}`, `shutoff pressure of ${name}`, pump.shutoff, unit.pressure);
  const at = `100 ${unit.flow}`;
  const b = d.give(`b${tag}`, `what ${name} has lost of it at ${at}`, pump.fall, unit.pressure);
  return `makes ${s} at shutoff and ${b} less at ${at}, the fall growing with the square of the flow`;
}

/** Flow of a pump against a pressure, as a formula. */
export function flowAgainst(setting: Setting, pressure: string, tag = ''): string {
  return `100 ${setting.unit.q} * sqrt((S${tag} - ${pressure}) / b${tag})`;
}

/** `(Q / (100 gpm))^2`. */
export function hundreds(setting: Setting, flow: string): string {
  return `(${flow} / (100 ${setting.unit.q}))^2`;
}

/** The key's answer beside the solver's. */
export function beside(hand: number, solver: number, unit: PrintedUnit, reason: string): CrossCheck {
  return {
    hand: { value: hand, unit },
    solver: { value: solver, unit },
    handText: worked(hand, unit),
    solverText: worked(solver, unit),
    reason,
  };
}

export const NO_GAP =
  'None: the sum and the network solver find the same point, as the curve is the same square law in both.';

export { figure };
