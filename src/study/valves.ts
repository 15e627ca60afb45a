import type { AssembleOptions } from '../assembly/assemble.js';
import type { Layout } from '../layout/layout.js';
import type { Step } from '../layout/step.js';
import { nearest } from '../quantity/nearest.js';

/** Raised where a nozzle or line is to be opened or shut that the layout does not have. */
export class UnknownNozzle extends Error {
  override name = 'UnknownNozzle';
}

export interface ValvesAsked {
  /** Names of nozzles, lines or outlets; `all` is every nozzle. */
  open?: readonly string[];
  shut?: readonly string[];
}

const ALL = 'all';

/**
 * Which nozzles stand open once the named ones are opened and shut. A line's name means every nozzle of it. `all` is
 * done before any name, so that `shut all, open lateral 7` leaves lateral 7 alone open.
 *
 * Throws UnknownNozzle for a name that the layout has not, or that is to be both opened and shut.
 */
export function nozzleStates(
  layout: Layout,
  { open = [], shut = [] }: ValvesAsked,
): AssembleOptions['nozzleState'] | undefined {
  if (open.length === 0 && shut.length === 0) return undefined;
  const known = nozzlesByName(layout);
  const named = (names: readonly string[]) =>
    new Set(names.filter((name) => name !== ALL).flatMap((name) => find(name, known)));
  const opened = named(open);
  const closed = named(shut);
  const both = [...opened].find((name) => closed.has(name));
  if (both !== undefined || (open.includes(ALL) && shut.includes(ALL)))
    throw new UnknownNozzle(`${both ?? 'every nozzle'} cannot be opened and shut at once`);
  return (name, stated) => {
    if (opened.has(name)) return 'open';
    if (closed.has(name)) return 'shut';
    if (open.includes(ALL)) return 'open';
    return shut.includes(ALL) ? 'shut' : stated;
  };
}

function find(name: string, known: ReadonlyMap<string, readonly string[]>): readonly string[] {
  const found = known.get(name);
  if (found) return found;
  const meant = nearest(name, [...known.keys()]);
  throw new UnknownNozzle(
    meant === undefined
      ? `the layout has no nozzle or line called ${name}; it has ${[...known.keys()].join(', ') || 'none'}`
      : `the layout has no nozzle or line called ${name}: did you mean ${meant}?`,
  );
}

/** Nozzles of the lay by their own names, and by those of the lines and outlets that they hang on. */
function nozzlesByName(layout: Layout): ReadonlyMap<string, string[]> {
  const known = new Map<string, string[]>();
  const walk = (steps: readonly Step[], around: readonly string[]) => {
    for (const step of steps) {
      if (step.kind === 'nozzle' || step.kind === 'open_end')
        for (const name of [step.label, ...around]) known.set(name, [...(known.get(name) ?? []), step.label]);
      else if (step.kind === 'branch') for (const line of step.to) walk(line.steps, [...around, line.name]);
    }
  };
  for (const { outlet, steps } of layout.lay) walk(steps, layout.lay.length > 1 ? [outlet] : []);
  return known;
}
