import { lossAtFlow } from '../assembly/laws.js';
import type { Element } from '../assembly/network-builder.js';
import type { OperatingPoint } from '../assembly/operating-point.js';
import { PSI } from '../physics/customary.js';
import type { HabitAnswer } from './field-answer.js';
import { hoseLength, isHose, LayPaths, trunkOf } from './paths.js';

/** Gauges are commonly marked in steps of 5 psi; a difference below one misleads nobody. Common practice, no source. */
const MISLEADS = 5 * PSI;

/**
 * Where the habit of taking all flow to the far end would have misled: the friction of each trunk with its flow leaving at
 * the wyes, and with all of it going on to the end.
 */
export function endToEndHabits(state: OperatingPoint): HabitAnswer[] {
  const paths = new LayPaths(state.assembly);
  return state.assembly.outlets.flatMap(({ name }) => {
    const open = state.assembly.nozzles.filter(
      (nozzle) => nozzle.state === 'open' && paths.outletOf(nozzle) === name,
    );
    const far = paths.farthest(open);
    if (far === undefined) return [];
    const trunk = trunkOf(paths.to(far.inlet));
    const habit = habitOf(
      trunk,
      (element) => state.flow(element.link),
      (element) => state.lossOf(element),
      state,
    );
    return habit.endToEnd - habit.actual > MISLEADS ? [{ outlet: name, ...habit }] : [];
  });
}

/** The friction of a trunk's hose as it flows and with the flow of its start all the way, up to the first tank or booster. */
export function habitOf(
  path: readonly Element[],
  flowIn: (element: Element) => number,
  lossOf: (element: Element) => number,
  state: OperatingPoint,
): Omit<HabitAnswer, 'outlet'> {
  const end = path.findIndex(({ kind }) => kind === 'tank' || kind === 'pump');
  const trunk = end < 0 ? path : path.slice(0, end);
  const flow = trunk.length === 0 ? 0 : flowIn(trunk[0]);
  const { group } = trunk[0] ?? {};
  let main = flow;
  let actual = 0;
  let endToEnd = 0;
  for (const element of trunk) {
    const own = flowIn(element);
    if (element.group === group) main = own;
    if (!isHose(element)) continue;
    // In one of several lines that part and meet again, all flow is still only this line's part of it.
    const part = main > 0 ? own / main : 1;
    actual += lossOf(element);
    endToEnd += state.pressureOf(lossAtFlow(element.law, flow * part));
  }
  return { flow, hose: hoseLength(trunk), actual, endToEnd };
}
