import { parse } from 'yaml';
import type { CatalogueRows } from '../../src/catalogue/kind.js';
import { loadCatalogue } from '../../src/catalogue/load.js';
import type { Layout } from '../../src/layout/layout.js';
import { LayoutProblems } from '../../src/layout/problem.js';
import { readLayoutText } from '../../src/layout/read-layout.js';
import type { Step } from '../../src/layout/step.js';

/** A small catalogue of our own, so that these tests do not hang on what ships. */
const ROWS = parse(`
hose:
  trunk: {inside_diameter: 1.5 in, coefficient: 24}
  lateral: {inside_diameter: 1 in, coefficient: 150}
pipe:
  two-inch: {inside_diameter: 2.157 in, roughness: 0.0018 in}
fitting:
  elbow_90: {friction_multiple: 30}
  ball_valve: {friction_multiple: 3}
valve:
  ball: {friction_multiple: 3, part_open: [[100 %, 0], [50 %, 5]]}
check_valve:
  swing: {friction_multiple: 100}
appliance:
  strainer: {k: 2, inside_diameter: 3 in}
  header: {loss: 5 psi}
branch:
  wye: {loss: 5 psi}
nozzle:
  fog: {kind: fog, flow: 20 gpm, pressure: 100 psi}
  tips: {kind: smooth_bore, tips: [1/4 in, 3/8 in]}
  straight: {kind: smooth_bore, bore: 3/8 in}
pump:
  twin: {points: [[0 gpm, 400 psi], [50 gpm, 330 psi], [100 gpm, 120 psi]]}
typing:
  table:
    title: A table of our own
    agency: none
    edition: "1"
    date: "2020"
    source: invented for the tests
    classes:
      heavy: {flow: 150 gpm, pressure: 250 psi}
      open: {flow: 150 gpm}
`) as CatalogueRows;

export const catalogue = loadCatalogue(ROWS);

/** The shortest engine that is whole. */
export const ENGINE = 'engine: {tank: {capacity: 500 gal}, pumps: {a: {model: twin}, b: {model: twin}}}';

export function layoutOf(text: string): Layout {
  return readLayoutText(text, 'layout.yaml', { catalogue }).layout;
}

/** The steps of a lay written in the layout of the shortest engine. */
export function layOf(steps: string, more = ''): Step[] {
  const { lay } = layoutOf(`${ENGINE}\n${more}\nlay:\n${indented(steps)}`);
  return lay[0]?.steps ?? [];
}

export function indented(text: string): string {
  return text
    .trim()
    .split('\n')
    .map((line) => `  ${line}`)
    .join('\n');
}

/** What is wrong with a text, one line a problem: `line:column message | expected | hint`. */
export function problemsOf(text: string): string[] {
  try {
    readLayoutText(text, 'layout.yaml', { catalogue });
  } catch (error) {
    if (!(error instanceof LayoutProblems)) throw error;
    return error.problems.map(({ line, column, message, expected, hint }) =>
      [`${line}:${column} ${message}`, expected && `expected ${expected}`, hint].filter(Boolean).join(' | '),
    );
  }
  return [];
}

/** As `problemsOf`, of steps that start on line 3. */
export function layProblemsOf(steps: string): string[] {
  return problemsOf(`${ENGINE}\nlay:\n${indented(steps)}`);
}
