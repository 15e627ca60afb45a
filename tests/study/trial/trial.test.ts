import { describe, expect, test } from 'vitest';
import * as z from 'zod';
import { Draw } from '../../../src/drill/random.js';
import { LayoutProblems } from '../../../src/layout/problem.js';
import { readLayout, readLayoutText } from '../../../src/layout/read-layout.js';
import { readTrial, readTrialText, type TrialReadings } from '../../../src/readings/read-trial.js';
import type { Instrument } from '../../../src/readings/trial-columns.js';
import { filledSheet } from '../../../src/report/bench/filled-sheet.js';
import { trialJson } from '../../../src/report/bench/json-schema-trial.js';
import { trialTree } from '../../../src/report/bench/json-trial.js';
import { trialDocument } from '../../../src/report/bench/trial-document.js';
import { calibratedLayout } from '../../../src/report/bench/write-layout.js';
import { htmlOf } from '../../../src/report/html.js';
import { treeInUnits } from '../../../src/report/json.js';
import { markdownOf } from '../../../src/report/markdown.js';
import { textOf } from '../../../src/report/text.js';
import { checkLayout } from '../../../src/study/rating.js';
import { Rig } from '../../../src/study/rig.js';
import { type Cause, causesOf } from '../../../src/study/trial/causes.js';
import { TrialModel } from '../../../src/study/trial/model.js';
import type { SetUp } from '../../../src/study/trial/observe.js';
import { trialOf } from '../../../src/study/trial/trial.js';
import { ALL, FULL_SHEET, LAYOUT, simulate } from './simulated.js';

const INCH = 0.0254;
const PSI = 6894.757293168361;
const DATA = `${import.meta.dirname}/../../../data/examples/`;
const EXAMPLE = `${DATA}test-day.csv`;

/** Readings that are what is predicted with one cause of a size, to the last digit. */
async function exact(
  setUps: readonly SetUp[],
  instruments: readonly Instrument[],
  id?: string,
  size = 0,
): Promise<TrialReadings> {
  const rig = await Rig.of(LAYOUT);
  const orifice = LAYOUT.typing?.requirement.test_orifice;
  if (orifice === undefined) throw new Error('the example has a test orifice');
  const causes = causesOf(LAYOUT, instruments, true).filter((cause) => cause.id === id);
  const observed = new TrialModel(rig, orifice, {}).observe(
    setUps,
    causes,
    causes.map(() => size),
  );
  if (observed === undefined) throw new Error('no steady state');
  const rows = setUps.map((setUp, i) => ({
    ...setUp,
    line: i + 2,
    read: Object.fromEntries(
      instruments.flatMap((one) => (observed[i][one] === undefined ? [] : [[one, observed[i][one]]])),
    ),
  }));
  return { file: 'exact', rows };
}

const TEST: SetUp = { staging: 'parallel', orifice: 0.716 * INCH };

describe('a test day', () => {
  test('predicts at the test orifice what check does, and judges a reading as check would', async () => {
    const check = await checkLayout(LAYOUT);
    const { answer } = await trialOf(LAYOUT, await exact([TEST], ['tee']));
    expect(answer.readings[0].predicted).toBeCloseTo(check.testOrifice?.reading ?? 0, -2);
    expect(answer.judged[0].margin).toBeCloseTo(check.testOrifice?.margin ?? 0, -2);
    expect(answer.judged[0].grade).toBe(check.testOrifice?.grade);
    expect(answer.verdict === 'passes').toBe(check.pumpVerdict === 'meets');
  });

  test('finds nothing wrong where all is as predicted', async () => {
    const { answer } = await trialOf(LAYOUT, await exact(FULL_SHEET, ALL));
    expect(answer.outcome).toBe('nothing_wrong');
    expect(answer.agree).toBe(answer.readings.length);
    expect(answer.telling).toBeUndefined();
  });

  const FAULTS: [string, number][] = [
    ['pump_worn a', 0.12],
    ['pump_worn b', 0.12],
    ['governor_low b', 0.08],
    ['check_valve a', 25],
    ['suction_blocked', 40],
    ['orifice_worn', 0.05],
    ['instrument_off tee', 20 * PSI],
    ['instrument_off inlet a', -3 * PSI],
  ];
  for (const [id, size] of FAULTS)
    test(`finds ${id} and how large it is`, async () => {
      const { ranked, answer } = await trialOf(LAYOUT, await exact(FULL_SHEET, ALL, id, size));
      expect(ranked[0].causes.map((cause) => cause.id)).toEqual([id]);
      expect(answer.outcome).toBe('found');
      expect(Math.abs(ranked[0].sizes[0] / size - 1)).toBeLessThan(0.15);
    });

  test('says that it cannot tell from one gauge, and what to read', async () => {
    const { answer, ranked } = await trialOf(LAYOUT, await exact([TEST], ['tee'], 'pump_worn b', 0.2));
    expect(answer.outcome).toBe('cannot_tell');
    expect(answer.alike).toBeGreaterThan(2);
    expect(ranked.slice(0, answer.alike + 3).some(({ causes }) => causes[0]?.id === 'pump_worn b')).toBe(
      true,
    );
    expect(answer.telling).toBeDefined();
  });

  test('does not tell wear from a slow governor by gauges with the outlet shut', async () => {
    const slow = await trialOf(
      LAYOUT,
      await exact([{ staging: 'a' }], ['panel', 'discharge a'], 'governor_low a', 0.05),
    );
    expect(slow.answer.outcome).toBe('cannot_tell');
    const named = slow.ranked.slice(0, slow.answer.alike).map(({ causes }) => causes[0]?.id);
    expect(named).toContain('governor_low a');
    expect(named).toContain('pump_worn a');
    expect(slow.answer.telling?.instrument).toBe('speed a');
  });

  test('names a fault of the example that was put there: pump b worn by 9.5 %', async () => {
    const { answer, ranked } = await trialOf(LAYOUT, readTrial(EXAMPLE, LAYOUT));
    expect(answer.verdict).toBe('fails');
    expect(ranked[0].causes.map(({ id }) => id)).toEqual(['pump_worn b']);
    expect(Math.abs(ranked[0].sizes[0] - 0.0945)).toBeLessThan(1.645 * 2 * ranked[0].deviations[0]);
  });

  test('tells that no reading decides, and that a layout without a typing has nothing to decide', async () => {
    const { answer } = await trialOf(LAYOUT, await exact([{ staging: 'a' }], ['panel']));
    expect(answer.verdict).toBe('not_judged');
    const bare = { ...LAYOUT, typing: undefined };
    expect((await trialOf(bare, await exact([TEST], ['tee']))).answer.verdict).toBe('not_judged');
  });

  test('says of a pass that lies within the error of its gauge that it does', async () => {
    const readings = await exact([TEST], ['tee']);
    readings.rows[0].read.tee = 252 * PSI;
    const { answer } = await trialOf(LAYOUT, readings);
    expect(answer.verdict).toBe('passes');
    expect(answer.judged[0].withinGaugeError).toBe(true);
    expect(answer.judged[0].grade).toBe('acceptable');
  });

  const WRITTEN: [string, number][] = [
    ['pump_worn b', 0.12],
    ['governor_low a', 0.08],
    ['check_valve b', 25],
    ['suction_blocked', 40],
  ];
  for (const [id, size] of WRITTEN)
    test(`writes a layout with ${id} in it, which predicts what was read`, async () => {
      const readings = await exact(FULL_SHEET, ALL, id, size);
      const { ranked } = await trialOf(LAYOUT, readings);
      const text = calibratedLayout(LAYOUT, ranked[0], ['Calibrated.']);
      const { layout } = readLayoutText(text, `${DATA}calibrated.yaml`);
      const again = await trialOf(layout, readings);
      expect(again.answer.outcome).toBe('nothing_wrong');
    });

  test('prints in every look, its JSON by its schema', async () => {
    const { answer } = await trialOf(LAYOUT, readTrial(EXAMPLE, LAYOUT));
    for (const units of ['us', 'si'] as const) {
      expect(z.safeParse(trialJson, treeInUnits(trialTree(answer, units), units)).error).toBeUndefined();
      const text = textOf(trialDocument(answer, units, false, false), { width: 80 });
      expect(text.split('\n').length).toBeLessThanOrEqual(41);
      expect(markdownOf(trialDocument(answer, units))).toContain('| 14 parallel');
      expect(htmlOf(trialDocument(answer, units))).toContain('<svg class="chart"');
      expect(filledSheet(answer, units).split('\r\n')).toHaveLength(answer.readings.length + 2);
    }
  });

  test('is the same whenever it is asked', async () => {
    const { readings } = await simulate(
      new Draw('same'),
      ALL,
      FULL_SHEET,
      ({ kind }: Cause) => kind === 'pump_worn',
    );
    const [one, other] = [await trialOf(LAYOUT, readings), await trialOf(LAYOUT, readings)];
    expect(one.answer).toEqual(other.answer);
  });
});

describe('a wrong sheet', () => {
  const alone = readLayout(`${DATA}demo.yaml`).layout;
  const single = {
    ...alone,
    staging: 'a' as const,
    engine: { ...alone.engine, pumps: { a: alone.engine.pumps.a } },
  };
  const HEAD = 'staging, orifice in, tee psi, panel psi\n';
  const WRONG: [string, string, RegExp, typeof alone?][] = [
    ['no orifice', 'staging, tee psi\nparallel, 250\n', /the column orifice is missing/],
    ['no instrument', 'staging, orifice in\nparallel, 0.716\n', /no instrument has a column/],
    ['a blank orifice', `${HEAD}parallel, , 250, 251\n`, /nothing stands under orifice/],
    [
      'a flow through a shut outlet',
      `${HEAD}parallel, shut, 250, 251\n`,
      /nothing flows with the outlet shut/,
    ],
    ['a staging that is none', `${HEAD}paralel, 0.716, 250, 251\n`, /did you mean parallel/],
    ['a pump that is not there', `${HEAD}b, 0.716, 250, 251\n`, /has one pump/, single],
    [
      'an orifice in feet',
      `${HEAD.replace('orifice in', 'orifice ft')}parallel, 0.716, 250, 251\n`,
      /no orifice has such a bore/,
    ],
    [
      'a unit of another kind',
      `${HEAD.replace('tee psi', 'tee gpm')}parallel, 0.716, 250, 251\n`,
      /gpm is a flow/,
    ],
    ['a row without a reading', `${HEAD}parallel, 0.716, , \n`, /nothing was read/],
    [
      'a row twice',
      `${HEAD}parallel, 0.716, 250, 251\nparallel, 0.716, 250, 251\n`,
      /in every figure what line 2 says/,
    ],
    [
      'an unknown column',
      `${HEAD.replace('panel psi', 'pannel psi')}parallel, 0.716, 250, 251\n`,
      /did you mean panel/,
    ],
    ['decimal commas', `${HEAD}parallel, 0.716, 250,5, 251\n`, /cells and the header 4/],
  ];
  for (const [name, text, expected, layout = LAYOUT] of WRONG)
    test(`${name} is answered with the place and what to write`, () => {
      const wrong = (() => {
        try {
          readTrialText(text, 'day.csv', layout);
        } catch (error) {
          if (error instanceof LayoutProblems) return error.message;
          throw error;
        }
        return '';
      })();
      expect(wrong).toMatch(expected);
      expect(wrong).toMatch(/day\.csv:\d+:\d+/);
    });
});
