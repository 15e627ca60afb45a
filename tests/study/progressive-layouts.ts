import type { Layout } from '../../src/layout/layout.js';
import { readLayoutText } from '../../src/layout/read-layout.js';
import type { Random } from '../support/random.js';

/** Pumps of three points, which EPANET draws the same curve through. Invented, as the engine is. */
export const PLAIN_ENGINE = `
engine:
  name: plain
  tank: {capacity: 5000 gal, outlet_height: 3 ft, depth: 4 ft}
  pumps:
    a: {model: &twin {points: [[0 gpm, 400 psi], [60 gpm, 318 psi], [130 gpm, 70 psi]], shape: power}}
    b: {model: *twin}
`;

export function layoutFrom(text: string): Layout {
  return readLayoutText(text, 'layout.yaml').layout;
}

/** A progressive lay of so many laterals over ground that rises and falls at random. */
export function randomPlan(random: Random, laterals: number): Layout {
  const every = random.integer(1, 3);
  const sections = laterals * every;
  let height = 0;
  const points = Array.from({ length: sections + 1 }, (_, index) => {
    if (index > 0) height += random.between(-35, 45);
    return `[${index * 100} ft, ${height.toFixed(3)} ft]`;
  });
  // The more laterals, the less each takes, so that water comes to the far end.
  const each = 36 / laterals;
  return layoutFrom(`
title: random plan
${PLAIN_ENGINE}
staging: ${random.pick(['parallel', 'series', 'a'])}
throttle: ${random.integer(70, 100)} %
appliance_policy: engineering
terrain: [${points.join(', ')}]
progressive:
  trunk: {hose: {inside_diameter: 2.5 in, coefficient: ${random.between(1, 4).toFixed(3)}}, length: 100 ft}
  sections: ${sections}
  lateral:
    every: ${every}
    branch: plain
    steps:
      - hose: {inside_diameter: 1 in, coefficient: 150}
        length: ${random.integer(50, 150)} ft
        rise: ${random.integer(-20, 20)} ft
      - nozzle: {kind: fog, flow: ${(each * random.between(0.5, 1.5)).toFixed(3)} gpm, pressure: 100 psi}
    flowing: ${random.pick(['all', 'all', '{last: 3}', 'none'])}
  end:
    - nozzle: {kind: fog, flow: ${random.between(5, 20).toFixed(3)} gpm, pressure: 100 psi}
`);
}
