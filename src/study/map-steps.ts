import type { Layout } from '../layout/layout.js';
import type { Step } from '../layout/step.js';

/** A layout whose lay has each step changed, those within branches and siamese lines too. */
export function mapLay(layout: Layout, change: (step: Step) => Step): Layout {
  const mapped = (steps: readonly Step[]): Step[] =>
    steps.map((step) => {
      const changed = change(step);
      if (changed.kind === 'branch')
        return { ...changed, to: changed.to.map((line) => ({ ...line, steps: mapped(line.steps) })) };
      if (changed.kind === 'siamese') return { ...changed, siamese: changed.siamese.map(mapped) };
      return changed;
    });
  return { ...layout, lay: layout.lay.map((lay) => ({ ...lay, steps: mapped(lay.steps) })) };
}
