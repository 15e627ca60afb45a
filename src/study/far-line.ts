import type { Layout } from '../layout/layout.js';
import type { NozzleStep, OpenEndStep, Step } from '../layout/step.js';

/** A layout in which the end of one line has burst open: water runs out of its hose where the nozzle was. */
export function burstOpen(layout: Layout, end: NozzleStep | OpenEndStep): Layout {
  const open: OpenEndStep = {
    kind: 'open_end',
    label: end.label,
    ...(end.name === undefined ? {} : { name: end.name }),
    path: end.path,
    at: end.at,
  };
  const replaced = (steps: readonly Step[]): Step[] =>
    steps.map((step) => {
      // Repeats share the place in the document and differ in their labels.
      if (step.kind === end.kind && step.label === end.label) return open;
      if (step.kind !== 'branch') return step;
      return { ...step, to: step.to.map((line) => ({ ...line, steps: replaced(line.steps) })) };
    });
  return { ...layout, lay: layout.lay.map((lay) => ({ ...lay, steps: replaced(lay.steps) })) };
}
