import type { Layout } from '../layout/layout.js';
import type { NozzleStep, OpenEndStep } from '../layout/step.js';
import { mapLay } from './map-steps.js';

/** A layout in which the end of one line has burst open: water runs out of its hose where the nozzle was. */
export function burstOpen(layout: Layout, end: NozzleStep | OpenEndStep): Layout {
  const open: OpenEndStep = {
    kind: 'open_end',
    label: end.label,
    ...(end.name === undefined ? {} : { name: end.name }),
    path: end.path,
    at: end.at,
  };
  // Repeats share the place in the document and differ in their labels.
  return mapLay(layout, (step) => (step.kind === end.kind && step.label === end.label ? open : step));
}
