import type { OperatingPoint } from '../assembly/operating-point.js';
import type { Hose } from '../catalogue/schema/hose.js';
import type { Layout } from '../layout/layout.js';
import { bearingLimit } from './hose-limit.js';
import { hoseLoads } from './hose-load.js';

/**
 * Names of the hose, in some states and carried, of which nothing says what pressure it bears;
 * what water is drafted through stands under no pressure.
 */
export function unknownHose(layout: Layout, points: readonly OperatingPoint[]): string[] {
  const unknown = (hose: Hose) => hose.kind !== 'suction' && bearingLimit(hose) === undefined;
  const laid = points.flatMap((point) =>
    hoseLoads(point).flatMap(({ element, hose }) =>
      unknown(hose) && element.path[0] !== 'supply' ? [element.modelName] : [],
    ),
  );
  const carried = (layout.engine.hose_carried ?? []).flatMap(({ hose, modelName }) =>
    unknown(hose) ? [modelName] : [],
  );
  return [...new Set([...laid, ...carried])];
}
