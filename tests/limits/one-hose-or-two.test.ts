import { describe, expect, test } from 'vitest';
import { answerDocument } from '../../src/report/answer-document.js';
import { textOf } from '../../src/report/text.js';
import type { CheckAnswer } from '../../src/study/answer.js';
import { checkLayout } from '../../src/study/rating.js';
import { type Document, layoutFrom, parabolic } from '../support/layouts.js';
import { PSI } from '../support/units.js';

/** Hose of the Forest Service's kind: a service test of 300 psi, so that 270 psi is the most that a valve is set to for it. */
const hose = (length: string): Document => ({
  hose: { inside_diameter: '1.5 in', coefficient: 24, limits: { service_test: '300 psi' } },
  length,
});

/** 400 ft of hose down into a dip of 160 ft and up again, in one length or in two. */
const TERRAIN = [
  ['0 ft', '0 ft'],
  ['200 ft', '-160 ft'],
  ['400 ft', '0 ft'],
];

const layoutWith = (lay: Document[]) =>
  layoutFrom({
    engine: {
      tank: { capacity: '500 gal', outlet_height: '0 ft' },
      pumps: { a: { model: parabolic(320, 75, 250, 120) } },
      relief: { opens_at: '260 psi' },
    },
    staging: 'a',
    typing: { custom: { flow: '60 gpm', pressure: '150 psi' } },
    lay: [...lay, { nozzle: { kind: 'smooth_bore', bore: '0.4 in' }, name: 'tip' }],
    terrain: TERRAIN,
  });

async function told(lay: Document[]): Promise<CheckAnswer> {
  return checkLayout(layoutWith(lay), { ledger: 'all' });
}

const oneHose = () => told([hose('400 ft')]);
const twoHoses = () => told([hose('200 ft'), hose('200 ft')]);

describe('hose through a dip of 160 ft', () => {
  test('is given one setting, one line of the ledger and one caution, in one length or in two', async () => {
    const [one, two] = await Promise.all([oneHose(), twoHoses()]);
    // 270 psi less 160 ft of water, 69.3 psi.
    expect((one.pressureControl?.highest?.pressure ?? 0) / PSI).toBeCloseTo(200.7, 0);
    expect(two.pressureControl?.highest?.pressure).toBeCloseTo(
      one.pressureControl?.highest?.pressure as number,
      0,
    );
    const line = ({ ledger }: CheckAnswer) =>
      ledger.lines.find(({ code }) => code === 'hose_near_limit') ?? {
        worst: Number.NaN,
        margin: Number.NaN,
      };
    expect(line(one).margin).toBeLessThan(0);
    expect(line(two).worst).toBeCloseTo(line(one).worst, 0);
    const hoseCautions = ({ cautions }: CheckAnswer) =>
      cautions.filter(({ code }) => code.startsWith('hose_')).map(({ code, level }) => ({ code, level }));
    expect(hoseCautions(one)).toHaveLength(1);
    expect(hoseCautions(two)).toEqual(hoseCautions(one));
  });

  test('is held to one limit in the caution, the ledger and the advice of the valve', async () => {
    const one = await oneHose();
    const text = textOf(answerDocument(one, 'us'));
    expect(text).toContain('Set it no higher than 201 psi');
    const setting = one.cautions.find(({ code }) => code === 'relief_above_hose');
    expect(setting?.limit?.value).toBe(one.pressureControl?.highest?.pressure);
  });
});
