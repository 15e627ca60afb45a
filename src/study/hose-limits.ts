import type { Assembly } from '../assembly/assembly.js';
import type { Element } from '../assembly/network-builder.js';
import { bearingLimit } from '../limits/hose-limit.js';
import { laidHose } from './ground-line.js';

/** Hose on the ground of which no limit is known, each kind once by its name: of it nothing says what it bears. */
export function hoseWithoutLimit(assembly: Assembly): string[] {
  const names = laidHose(assembly).flatMap(({ step }) =>
    // Hard suction hose is drawn through, and stands under no pressure to speak of.
    step?.kind === 'hose' && step.hose.kind !== 'suction' && bearingLimit(step.hose) === undefined
      ? [step.modelName]
      : [],
  );
  return [...new Set(names)];
}

/** The lowest limit of hose, Pa, and of which; undefined where none is known. */
export function lowestHoseLimit(hose: readonly Element[]): { hose: string; pressure: number } | undefined {
  let lowest: { hose: string; pressure: number } | undefined;
  for (const { step } of hose) {
    const limit = step?.kind === 'hose' ? bearingLimit(step.hose) : undefined;
    if (step?.kind !== 'hose' || limit === undefined) continue;
    if (lowest === undefined || limit.pressure < lowest.pressure)
      lowest = { hose: step.modelName, pressure: limit.pressure };
  }
  return lowest;
}
