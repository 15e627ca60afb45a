import { expect } from 'vitest';
import { whyImpossible } from '../../../src/limits/impossible.js';
import { answerDocument } from '../../../src/report/answer-document.js';
import { toJson } from '../../../src/report/json.js';
import { markdownOf } from '../../../src/report/markdown.js';
import { textOf } from '../../../src/report/text.js';
import type { CheckAnswer } from '../../../src/study/answer.js';
import { deliveries } from '../../../src/study/delivery.js';
import { checkLayout } from '../../../src/study/rating.js';
import { Rig } from '../../../src/study/rig.js';
import {
  answerOf,
  type Drawn,
  expectAlike,
  figuresPrinted,
  pressuresIn,
  quantitiesIn,
  readOrNone,
} from './harness.js';

/** Pressures that two solves of one state may differ by, Pa (0.01 psi). */
const ONE_STATE = 70;
/** psi below which nothing stands: no air over the site pushes harder than this. */
const LEAST_PSI = -16;

/** Asks a check of a drawn layout in every way that is known to give one answer. Whether it was answered at all. */
export async function checkAgrees(drawn: Drawn): Promise<boolean> {
  const { layout, seed } = drawn;
  const { elevation } = layout.site;
  const across = [{ of: 'elevation' as const, values: [elevation] }];
  const answer = await answerOf(() => checkLayout(layout, { across, ledger: 'all' }));
  if (answer === undefined) return false;
  atItsOwnPlace(drawn, answer);
  inEveryForm(drawn, answer);
  await neverMeetsWhatCannotBe(drawn, answer);
  await pumpAlone(drawn, answer);
  await hoseInTwo(drawn, answer);
  expect(answer.verdict === 'meets' && answer.pumpVerdict !== 'meets', `layout ${seed}`).toBe(false);
  return true;
}

function atItsOwnPlace(drawn: Drawn, answer: CheckAnswer): void {
  const [row] = answer.across[0].rows;
  expect(row.verdict, `verdict of layout ${drawn.seed} at its own place`).toBe(answer.pumpVerdict);
  expectAlike(drawn, 'pressure at its own place', row.pressure, answer.atRequiredFlow?.pressure, ONE_STATE);
  expectAlike(drawn, 'reading at its own place', row.reading, answer.testOrifice?.reading, ONE_STATE);
  const own = answer.stagings.find(({ staging }) => staging === answer.staging);
  expect(own?.verdict, `own row of layout ${drawn.seed}`).toBe(answer.pumpVerdict);
  expectAlike(drawn, 'own row', own?.atRequiredFlow?.pressure, answer.atRequiredFlow?.pressure, ONE_STATE);
}

function inEveryForm({ seed }: Drawn, answer: CheckAnswer): void {
  const document = answerDocument(answer, 'us');
  const text = textOf(document, { width: 200 });
  const markdown = markdownOf(document);
  const json = toJson(answer, 'us') as Record<string, unknown>;
  expect(json.verdict, `JSON of layout ${seed}`).toBe(answer.verdict);
  expect(
    text.startsWith(answer.verdict === 'meets' ? 'MEETS' : 'FALLS SHORT'),
    `text of layout ${seed}`,
  ).toBe(true);
  expect(markdown, `Markdown of layout ${seed}`).toContain(
    answer.verdict === 'meets' ? 'MEETS' : 'FALLS SHORT',
  );
  // A gain of pressure downhill is printed as a loss below zero.
  const losses = text.replace(/Where the pressure goes[\s\S]*?\n\n/, '');
  // A pressure net of the intake is a difference, and bounded by no vacuum.
  const standing = answer.requirement.points.some(({ net }) => net) ? '' : losses;
  const low = figuresPrinted(standing).filter(({ unit, value }) => unit === 'psi' && value < LEAST_PSI);
  expect(low, `text of layout ${seed}`).toEqual([]);
  const { points, pumps } = json;
  expect(Math.min(0, ...pressuresIn([points, pumps])), `JSON of layout ${seed}`).toBeGreaterThan(LEAST_PSI);
  headlineInJson(seed, text, json);
}

/** What the first paragraph prints is in JSON, to the digits that it prints. */
function headlineInJson(seed: number, text: string, json: Record<string, unknown>): void {
  const [headline] = text.split('\n\n');
  const known = quantitiesIn(json);
  for (const { value, unit } of figuresPrinted(headline)) {
    const step = Math.max(10 ** Math.floor(Math.log10(Math.abs(value) || 1) - 1), 0.11);
    const near = known.some(
      (one) => one.unit === unit && Math.abs(Math.abs(one.value) - Math.abs(value)) <= step,
    );
    // What a sentence of JSON says in words is told to a program as well.
    const inWords = JSON.stringify(json).includes(`${value} ${unit}`);
    const boils = unit === 'psi' && value < 0;
    expect(near || boils || inWords, `${value} ${unit} of layout ${seed} is in JSON`).toBe(true);
  }
}

async function neverMeetsWhatCannotBe({ layout, seed }: Drawn, answer: CheckAnswer): Promise<void> {
  const rig = await Rig.of(layout);
  for (const { staging, verdict, atRequiredFlow } of answer.stagings) {
    if (verdict !== 'meets') continue;
    expect(atRequiredFlow, `${staging} of layout ${seed} meets`).toBeDefined();
    const passing = deliveries(rig, staging).filter((delivery) =>
      answer.requirement.points.every(({ flow, lift }) =>
        delivery.drawing(lift, () => whyImpossible(delivery.at(flow)) === undefined),
      ),
    );
    expect(passing.length, `ends of ${staging} of layout ${seed} that can be`).toBeGreaterThan(0);
  }
}

/** `check` of a layout in one pump alone, and what the check of both says of that pump. */
async function pumpAlone(drawn: Drawn, answer: CheckAnswer): Promise<void> {
  for (const { staging, verdict, types } of answer.pumpsOut) {
    const layout = readOrNone({ ...drawn.document, staging });
    if (layout === undefined) continue;
    const alone = await answerOf(() => checkLayout(layout));
    if (alone === undefined) continue;
    expect(alone.pumpVerdict, `${staging} alone of layout ${drawn.seed}`).toBe(verdict);
    const { class: own } = alone.requirement;
    const still = types.some(({ class: name }) => name === (own === '' ? 'custom' : own));
    expect(still, `${staging} alone still makes it, of layout ${drawn.seed}`).toBe(verdict === 'meets');
  }
}

/** The first hose of the lay cut in two. */
async function hoseInTwo(drawn: Drawn, answer: CheckAnswer): Promise<void> {
  const cut = cutInTwo(drawn.document);
  const layout = cut && readOrNone(cut);
  if (layout === undefined) return;
  const two = await answerOf(() => checkLayout(layout, { ledger: 'all' }));
  if (two === undefined) return;
  expect(two.verdict, `layout ${drawn.seed} with its hose in two`).toBe(answer.verdict);
  expectAlike(
    drawn,
    'highest setting with its hose in two',
    two.pressureControl?.highest?.pressure,
    answer.pressureControl?.highest?.pressure,
    ONE_STATE,
  );
  const levels = ({ cautions }: CheckAnswer) =>
    cautions.filter(({ code }) => code.startsWith('hose_over')).map(({ code }) => code);
  expect(levels(two), `hose cautions of layout ${drawn.seed} with its hose in two`).toEqual(levels(answer));
}

function cutInTwo(document: Drawn['document']): Drawn['document'] | undefined {
  const { lay } = document as { lay?: unknown };
  if (!Array.isArray(lay)) return undefined;
  const index = lay.findIndex(
    (step) => typeof step?.hose !== 'undefined' && /^[\d.]+ ft$/.test(step.length ?? ''),
  );
  if (index < 0) return undefined;
  const hose = lay[index] as Record<string, string>;
  const half = `${Number.parseFloat(hose.length) / 2} ft`;
  const rise = hose.rise === undefined ? {} : { rise: `${Number.parseFloat(hose.rise) / 2} ft` };
  if (hose.rise !== undefined && !/^-?[\d.]+ ft$/.test(hose.rise)) return undefined;
  const { name: _name, ...plain } = hose;
  const one = { ...plain, length: half, ...rise };
  return { ...document, lay: [...lay.slice(0, index), one, one, ...lay.slice(index + 1)] };
}
