import { loadCatalogue } from '../../src/catalogue/load.js';
import type { Layout } from '../../src/layout/layout.js';
import { readLayoutText } from '../../src/layout/read-layout.js';

export const PSI = 6894.757293168361;
export const GPM = (231 * 0.0254 ** 3) / 60;
export const FOOT = 0.3048;

/** Two pumps of our own invention whose curve is H = 400 - 0.02 Q^2 psi and gpm: points of that parabola. */
export const PARABOLA = '[[0 gpm, 400 psi], [50 gpm, 350 psi], [100 gpm, 200 psi]]';

export function engine(more = '', pump = `{name: twin, points: ${PARABOLA}}`): string {
  return `engine:
  name: engine of the tests
  tank: {capacity: 500 gal}
  pumps: {a: {model: ${pump}}, b: {model: ${pump}}}
  outlets: {left: []}
  ${more}
`;
}

export interface Section {
  feet: number;
  rise?: number;
  /** A lateral at its end: feet of 1 in hose of C 150, and a fog nozzle of so many gpm at so many psi. */
  lateral?: { feet: number; gpm: number; psi?: number; state?: 'open' | 'shut' };
}

/** A trunk of 1-1/2 in hose of C 24 with laterals, as a lay of YAML; `far` is what it ends in. */
export function lay(sections: readonly Section[], far: string): string {
  const steps = sections.map(({ feet, rise = 0, lateral }, i) => {
    const hose = `- {hose: {inside_diameter: 1.5 in, coefficient: 24}, length: ${feet} ft, rise: ${rise} ft}`;
    if (!lateral) return hose;
    const { gpm, psi = 100, state = 'open' } = lateral;
    const line =
      lateral.feet > 0
        ? `{hose: {inside_diameter: 1 in, coefficient: 150}, length: ${lateral.feet} ft}, `
        : '';
    return `${hose}
    - branch: gated-wye
      to: [{name: lateral ${i + 1}, steps: [${line}{nozzle: {kind: fog, flow: ${gpm} gpm, pressure: ${psi} psi}, name: nozzle ${i + 1}, state: ${state}}]}]`;
  });
  return `lay:\n  left:\n    ${steps.join('\n    ')}\n    - ${far}\n`;
}

/** Read once for all layouts of a test file. */
const catalogue = loadCatalogue();

export function layoutOf(text: string): Layout {
  return readLayoutText(text, 'tests.yaml', { catalogue }).layout;
}

export const FAR_FOG = '{nozzle: {kind: fog, flow: 20 gpm, pressure: 100 psi}, name: far}';
