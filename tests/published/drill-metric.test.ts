import { describe, expect, test } from 'vitest';
import { poseKey } from '../../src/drill/pose.js';
import type { HoseSize } from '../../src/drill/rules/rule-set.js';
import { frictionLoss } from '../../src/drill/topics/friction-loss.js';
import { smoothBoreFlow } from '../../src/drill/topics/smooth-bore-flow.js';
import { rules, rulesOf } from './drill-rules.js';

describe('École nationale des pompiers du Québec, pump-operator course table (2012), posed by the drill', () => {
  /** Loss in 30 m, kPa, by flow in L/min. */
  const table: [HoseSize, [number, number][]][] = [
    [
      '1.5',
      [
        [50, 3],
        [95, 10],
        [150, 26],
        [230, 60],
        [316, 114],
        [380, 165],
        [475, 257],
        [598, 407],
        [750, 641],
      ],
    ],
    [
      '1.75',
      [
        [75, 4],
        [150, 17],
        [230, 39],
        [360, 96],
        [475, 167],
        [550, 223],
        [711, 373],
        [950, 666],
      ],
    ],
    [
      '2.5',
      [
        [316, 10],
        [446, 19],
        [598, 34],
        [711, 48],
        [950, 86],
        [1038, 103],
        [1585, 239],
        [2235, 475],
      ],
    ],
    [
      '3',
      [
        [550, 12],
        [711, 19],
        [950, 34],
        [1585, 96],
        [1900, 138],
        [3134, 374],
        [3800, 550],
      ],
    ],
    [
      '4',
      [
        [1585, 23],
        [1900, 33],
        [2235, 46],
        [3134, 90],
        [3800, 132],
        [5700, 297],
        [7600, 529],
      ],
    ],
    [
      '5',
      [
        [1585, 10],
        [1900, 15],
        [2235, 21],
        [3134, 41],
        [3800, 60],
        [5700, 135],
        [7600, 239],
      ],
    ],
  ];
  for (const [hose, rows] of table)
    for (const [flow, printed] of rows)
      test(`size ${hose}, ${flow} L/min: ${printed} kPa in 30 m`, () => {
        const { answer } = poseKey(frictionLoss, { hose, length: 30, flow }, rules('structural'), 'si');
        // Whole kPa are printed, some of them rounded up: a cell is off by 1 kPa at most.
        expect(Math.abs(answer - printed)).toBeLessThanOrEqual(1);
      });

  const tips: [number, number, number][] = [
    [10, 350, 123],
    [13, 350, 209],
    [16, 350, 316],
    [19, 350, 446],
    [22, 350, 598],
    [25, 350, 772],
    [29, 350, 1038],
    [32, 550, 1585],
    [38, 550, 2235],
    [50, 550, 3870],
  ];
  for (const [bore, pressure, printed] of tips)
    test(`${bore} mm tip at ${pressure} kPa: ${printed} L/min`, () => {
      const { answer } = poseKey(smoothBoreFlow, { bore, pressure, ask: 'flow' }, rules('structural'), 'si');
      // The table's own constant runs from 0.0657 to 0.0660.
      expect(Math.abs(answer / printed - 1)).toBeLessThan(0.006);
    });
});

describe('Freiwillige Feuerwehr Pegau, training note on friction loss, posed by the drill', () => {
  test('B-75 hose, 800 L/min, 100 m: 1.28 bar, cut to 1.2', () => {
    const theirs = rulesOf(
      'structural',
      'friction: {method: coefficient, hoses: {"3": {coefficient: 2, source: the note}}}',
      'si',
    );
    const { answer } = poseKey(frictionLoss, { hose: '3' as const, length: 100, flow: 800 }, theirs, 'si');
    expect(answer).toBeCloseTo(128, 9);
    expect(Math.floor(answer / 10) / 10).toBe(1.2);
  });
});
