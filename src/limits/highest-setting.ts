import { alongHose, isLaid } from '../assembly/along-hose.js';
import type { Element } from '../assembly/network-builder.js';
import type { OperatingPoint } from '../assembly/operating-point.js';
import type { Layout } from '../layout/layout.js';
import { pressureOfHeight } from '../physics/elevation.js';
import { type HoseLimit, settingLimit } from './hose-limit.js';

/** The highest setting of a relief valve or a governor at the pumps that every part allows. */
export interface HighestSetting {
  /** Gauge pressure at the height of the pump inlets, Pa. */
  pressure: number;
  /** The part that sets it: `hose 1 of the lay`, `the casing of pump a`. */
  by: string;
  rule: HoseLimit['rule'] | 'casing';
  source: string;
}

/**
 * The highest setting at which every hose that the engine's pumps press on, in the lay and on the truck, and every casing
 * stands within what it bears. Hose that dips below the pumps, at its ends or between them, stands under the height as well;
 * hose behind an open tank or a booster stands under another pressure. Undefined where no part states a limit.
 */
export function highestSetting(layout: Layout, state: OperatingPoint): HighestSetting | undefined {
  const { engine } = layout;
  const laid = pressedOn(state.assembly.elements).flatMap((element) => {
    const limit = element.step?.kind === 'hose' ? settingLimit(element.step.hose) : undefined;
    return limit === undefined ? [] : [setting(limit, element.name, underHeight(state, element))];
  });
  const carried = (engine.hose_carried ?? []).flatMap(({ hose, modelName }) => {
    const limit = settingLimit(hose);
    return limit === undefined ? [] : [setting(limit, `${modelName} carried`, 0)];
  });
  const casings = (['a', 'b'] as const).flatMap((name): HighestSetting[] => {
    const casing = engine.pumps[name]?.model.limits?.casing;
    const by = `the casing of pump ${name}`;
    return casing === undefined
      ? []
      : [{ pressure: casing, by, rule: 'casing', source: `limit stated for ${by}` }];
  });
  const all = [...laid, ...carried, ...casings];
  return all.length === 0
    ? undefined
    : all.reduce((kept, one) => (one.pressure < kept.pressure ? one : kept));
}

function setting(limit: HoseLimit, by: string, height: number): HighestSetting {
  const { pressure, rule, source } = limit;
  return { pressure: pressure - height, by, rule, source };
}

/** What the height of the water adds at the lowest point of a hose over the pressure at the pumps, Pa; never below 0. */
function underHeight(state: OperatingPoint, element: Element): number {
  const lowest = Math.min(0, ...alongHose(state, element).map(({ height }) => height));
  return pressureOfHeight(-lowest, state.assembly.site.waterDensity);
}

/** Parts that the engine's own pumps press on: all but what lies behind an open tank or a booster of the lay. */
function pressedOn(elements: readonly Element[]): Element[] {
  const behind = new Set<number>();
  return elements.filter((element) => {
    const parts = element.kind === 'tank' || (element.kind === 'pump' && isLaid(element));
    if (parts || behind.has(element.from.node)) behind.add(element.to.node);
    return !parts && !behind.has(element.from.node);
  });
}
