import { describe, expect, it } from 'vitest';
import { grown, sectionOf } from '../../src/layout/progressive.js';
import { ENGINE, layoutOf, problemsOf } from './support.js';

const PLAN = `${ENGINE}
terrain: [[0 ft, 0 ft], [400 ft, 90 ft], [1,000 ft, -30 ft]]
progressive:
  trunk: {hose: trunk, length: 100 ft}
  sections: 6
  lateral:
    every: 2
    branch: wye
    steps:
      - hose: lateral
        length: 100 ft
      - nozzle: fog
    flowing: {last: 1}
  end:
    - nozzle: straight
`;

describe('a progressive lay', () => {
  it('is read whole: sections on the terrain, a lateral at every second, the head at the end', () => {
    const { lay, progressive } = layoutOf(PLAN);
    const labels = lay[0].steps.map(({ label }) => label);
    expect(labels).toEqual([
      'section 1',
      'section 2',
      'wye 1',
      'section 3',
      'section 4',
      'wye 2',
      'section 5',
      'section 6',
      'wye 3',
      'far nozzle',
    ]);
    const rises = progressive?.trunk.map(({ rise }) => Math.round((rise / 0.3048) * 10) / 10);
    expect(rises).toEqual([22.5, 22.5, 22.5, 22.5, -20, -20]);
  });

  it('opens the laterals that flow at each length, and knows to which section each step belongs', () => {
    const { progressive } = layoutOf(PLAN);
    if (!progressive) throw new Error('the plan was not read');
    const steps = grown(progressive, { sections: 4 });
    const wyes = steps.flatMap((step) => (step.kind === 'branch' ? [step] : []));
    const states = wyes.map(
      ({ to }) => to[0].steps.map((step) => (step.kind === 'nozzle' ? step.state : undefined))[1],
    );
    expect(states).toEqual(['shut', 'open']);
    expect(wyes.map(sectionOf)).toEqual([2, 4]);
    expect(sectionOf(wyes[1].to[0].steps[0])).toBe(4);
    expect(sectionOf(steps.at(-1))).toBe(4);
  });

  it('grows from where the lay ends, and lies on the ground beyond it', () => {
    const text = `${PLAN}lay:\n  - hose: trunk\n    length: 200 ft\n`;
    const { lay, progressive } = layoutOf(text);
    expect(lay[0].steps[0].label).toBe('hose 1 of outlet');
    expect(progressive?.trunk.map(({ rise }) => Math.round(rise / 0.3048 / 2.5) * 2.5)).toEqual([
      22.5, 22.5, -20, -20, -20, -20,
    ]);
  });

  const WRONG: [string, string, RegExp][] = [
    [
      'hose that the catalogue has not',
      PLAN.replace('hose: trunk', 'hose: trunc'),
      /no hose trunc \| did you mean trunk\?/,
    ],
    ['a lay that has an end', `${PLAN}lay:\n  - nozzle: fog\n`, /ends in a nozzle, so that nothing can grow/],
    [
      'ground that is too short',
      PLAN.replace('1,000 ft, -30 ft', '500 ft, 30 ft'),
      /terrain ends before the plan of 6 sections/,
    ],
    [
      'a lateral without an end',
      PLAN.replace('      - nozzle: fog\n', ''),
      /the lateral stops here, open or shut/,
    ],
    ['a word for what flows that means none', PLAN.replace('{last: 1}', 'some'), /"all"|all/],
    ['a misspelt key', PLAN.replace('every: 2', 'evry: 2'), /evry/],
    [
      'an outlet that is not there',
      PLAN.replace('  sections: 6', '  outlet: right\n  sections: 6'),
      /no outlet right/,
    ],
  ];
  for (const [what, text, message] of WRONG) {
    it(`reports ${what}`, () => {
      expect(problemsOf(text).join('\n')).toMatch(message);
    });
  }

  it('reports every mistake at once', () => {
    const text = PLAN.replace('hose: trunk', 'hose: trunc')
      .replace('nozzle: fog', 'nozzle: fogg')
      .replace('every: 2', 'every: 0');
    expect(problemsOf(text)).toHaveLength(3);
  });
});
