import { contentPerLength } from '../catalogue/schema/hose.js';
import type { Layout } from '../layout/layout.js';
import type { HoseStep, Step } from '../layout/step.js';
import type { StoreUse } from './advance-answer.js';
import { within } from './rig.js';

/** Sizes that differ by less than this are one, m. */
const SAME_SIZE = 1e-4;

/** Every step that lies on the ground, those of branches and siamese lines too. */
export function laidSteps(layout: Layout): Step[] {
  return layout.lay.flatMap(({ steps }) => steps.flatMap(within));
}

const hoseOf = (layout: Layout): HoseStep[] =>
  laidSteps(layout).flatMap((step) => (step.kind === 'hose' ? [step] : []));

/** Water that fills the hose on the ground, m3. */
export function hoseFill(layout: Layout): number {
  return fillOf(hoseOf(layout));
}

/** Water that fills lengths of hose, m3. */
export function fillOf(lengths: readonly HoseStep[]): number {
  return lengths.reduce((sum, { hose, length, lines }) => sum + contentPerLength(hose) * length * lines, 0);
}

/** Hose on the ground against hose carried, size by size, as the trade counts it. */
export function hoseUsed(layout: Layout): StoreUse[] {
  const { hose_carried } = layout.engine;
  const sizes: { size: number; used: number }[] = [];
  for (const { hose, length, lines } of hoseOf(layout)) {
    const size = hose.nominal ?? hose.inside_diameter;
    const known = sizes.find((one) => Math.abs(one.size - size) < SAME_SIZE);
    if (known) known.used += length * lines;
    else sizes.push({ size, used: length * lines });
  }
  return sizes.map(({ size, used }) => {
    const carried = hose_carried
      ?.filter(({ hose }) => Math.abs((hose.nominal ?? hose.inside_diameter) - size) < SAME_SIZE)
      .reduce((sum, { length }) => sum + length, 0);
    return {
      item: `${inches(size)} in hose`,
      used: { value: used, dimension: 'length' },
      ...(carried === undefined ? {} : { carried: { value: carried, dimension: 'length' } }),
    };
  });
}

/** The trade calls hose by its size in inches, whatever the units of an answer. */
const inches = (size: number): string => String(Number((size / 0.0254).toFixed(2)));

/** Branches, nozzles and appliances on the ground against those carried. */
export function fittingsUsed(layout: Layout): StoreUse[] {
  const carried = layout.engine.fittings_carried ?? {};
  const used = new Map<string, { name: string; count: number }>();
  for (const step of laidSteps(layout)) {
    if (!['branch', 'nozzle', 'appliance', 'valve', 'check_valve'].includes(step.kind)) continue;
    const { id, modelName } = step as Extract<Step, { kind: 'branch' }>;
    const key = id ?? modelName;
    const before = used.get(key);
    if (before) before.count += 1;
    else used.set(key, { name: modelName, count: 1 });
  }
  return [...used].map(([id, { name, count }]) => ({
    item: name,
    used: { value: count, dimension: 'ratio' },
    ...(Object.hasOwn(carried, id) ? { carried: { value: carried[id], dimension: 'ratio' } } : {}),
  }));
}

/** What is used beyond what is carried. */
export function lacking(uses: readonly StoreUse[]): StoreUse[] {
  // A length of 300.0 ft read through metres is no more than 300 ft.
  return uses.filter(({ used, carried }) => carried !== undefined && used.value > carried.value * (1 + 1e-9));
}
