import { describe, expect, test } from 'vitest';
import { answerDocument } from '../../src/report/answer-document.js';
import { toJson } from '../../src/report/json.js';
import { checkJson, flowJson } from '../../src/report/json-schema.js';
import { textOf } from '../../src/report/text.js';
import { operateLayout } from '../../src/study/operation.js';
import { checkLayout } from '../../src/study/rating.js';
import { engine, FAR_FOG, layoutOf } from '../study/support.js';

const HOSE = 'hose: {inside_diameter: 1.5 in, coefficient: 24}';
const FAR = '{nozzle: {kind: smooth_bore, bore: 3/8 in}, name: far}';
const TYPING = 'typing: {flow: 100 gpm, pressure: 100 psi}\n';
const SUCTION = '[{hose: suction-2.5, length: 120 ft}]';

/** Pumps strong enough that, by the equations alone, each of these would do what it is asked. */
const ABSURD = {
  'a lift of 100 ft': `supply: {draft: {lift: 100 ft, suction: ${SUCTION}}}\nlay: {left: [{${HOSE}, length: 100 ft}, ${FAR}]}`,
  'a suction of garden hose': `supply: {draft: {lift: 5 ft, suction: [{hose: {inside_diameter: 0.5 in, coefficient: 1100}, length: 900 ft}]}}\nlay: {left: [{${HOSE}, length: 100 ft}, ${FAR}]}`,
  'a hydrant that gives next to nothing': `supply: {hydrant: {static: 20 psi, residual: 5 psi, flow: 20 gpm}}\nlay: {left: [{${HOSE}, length: 100 ft}, ${FAR}]}`,
  'a booster far beyond the reach of the engine': `lay: {left: [{hose: {inside_diameter: 1 in, coefficient: 150}, length: 3000 ft, rise: 500 ft}, {pump: {name: light, points: [[0 gpm, 400 psi], [50 gpm, 350 psi], [100 gpm, 200 psi]]}}, ${FAR}]}`,
  'a ridge of 900 ft': `terrain: [[0 ft, 0 ft], [2000 ft, 900 ft], [4000 ft, -300 ft]]\nlay: {left: [{${HOSE}, length: 4000 ft}, ${FAR}]}`,
  'a nozzle 3,000 ft up': `lay: {left: [{${HOSE}, length: 4000 ft, rise: 3000 ft}, {gauge: top}, ${FAR}]}`,
};

const layoutWith = (lay: string, more = '') => layoutOf(`${engine()}${TYPING}${lay}\n${more}`);

/** No gauge falls below this anywhere: a perfect vacuum under one standard atmosphere, psi. */
const LEAST_PSI = -14.7;

/** Figures that a reader takes for a reading; what water would have to do is told as such in the cautions. */
function readings(text: string): number[] {
  const told = text
    .replace(/Cautions, most dangerous first[\s\S]*?\n\n/g, '')
    .replace(/[^.]*would have to[^.]*\./g, '');
  return [...told.matchAll(/(?<!e)(-[\d,.]+) psi/g)].map(([, figure]) => Number(figure.replaceAll(',', '')));
}

const flat = (text: string) => text.replace(/\s+/g, ' ');

describe.each(Object.entries(ABSURD))('%s', (name, lay) => {
  const dry = name.includes('3,000');

  test('flow says in its first line that it cannot be, and prints no pressure below a vacuum', async () => {
    const answer = await operateLayout(layoutWith(lay));
    const text = textOf(answerDocument(answer, 'us'));
    expect(flat(text)).toMatch(
      dry
        ? /^NO WATER/
        : /^CANNOT FLOW SO in parallel: (the inlet|the start|the end|end|start|a turn) of .* would have to stand /,
    );
    expect(readings(text).filter((psi) => psi < LEAST_PSI)).toEqual([]);
    expect(text).not.toMatch(/\d{3}(\.\d)? inHg/);
    expect(text).not.toMatch(/-[\d,]+ ft,? ?(needs|SHORT)/);
  });

  test('a program is told null and why', async () => {
    const tree = toJson(await operateLayout(layoutWith(lay)), 'us');
    const json = flowJson.parse(tree);
    const told = [
      ...json.points.map(({ pressure, reason }) => ({ pressures: [pressure], reason })),
      ...json.nozzles.map(({ pressure, reason }) => ({ pressures: [pressure], reason })),
      ...json.lines.map((line) => ({
        pressures: [line.inlet_pressure, line.outlet_pressure],
        reason: line.reason,
      })),
      ...json.pumps.map((pump) => ({ pressures: [pump.inlet_pressure], reason: pump.reason })),
      ...json.profiles.map(({ highest }) => ({ pressures: [highest.pressure], reason: highest.reason })),
      ...(json.supply ? [{ pressures: [json.supply.intake_pressure], reason: json.supply.reason }] : []),
    ];
    for (const { pressures, reason } of told) {
      expect(reason === null).toBe(pressures.every((pressure) => pressure !== null));
      for (const pressure of pressures) expect(pressure?.value ?? 0).toBeGreaterThan(LEAST_PSI);
    }
    expect(json.impossible.length === 0).toBe(dry);
    expect(json.impossible_at === null).toBe(dry);
    if (dry) expect(told.some(({ reason }) => reason !== null)).toBe(true);
    else {
      expect(told).toEqual([]);
      expect([json.total_flow, json.tank, json.supply, json.line_control]).toEqual([null, null, null, null]);
      for (const { reason, source } of json.impossible) expect(`${reason}${source}`).not.toContain('{');
    }
  });
});

test('water that is not lifted up to a nozzle is no water there, and not a pressure far below the air', async () => {
  const fog = ABSURD['a nozzle 3,000 ft up'].replace(FAR, FAR_FOG);
  const text = textOf(answerDocument(await operateLayout(layoutWith(fog)), 'us'));
  expect(text).toMatch(/far +0 gpm +no water/);
  expect(text).toMatch(/top +no water +3,000 ft/);
  expect(text).toContain('No water reaches far with the lay as it stands');
});

test('a staging that runs off its curve says that, and not that water would boil past it', async () => {
  const weak = '{name: weak, points: [[0 gpm, 300 psi], [50 gpm, 250 psi], [80 gpm, 100 psi]]}';
  const answer = await checkLayout(layoutOf(`${engine('', weak)}${TYPING}staging: parallel\n`));
  const series = answer.stagings.find(({ staging }) => staging === 'series');
  expect(series?.refusal).toBeUndefined();
  expect(series?.limit?.template).toContain('reaches the end of its curve');
});

describe('a check of a lift that no air pressure lifts', () => {
  const strong = '{name: strong, points: [[0 gpm, 600 psi], [50 gpm, 550 psi], [150 gpm, 400 psi]]}';
  const layout = () =>
    layoutOf(
      `${engine('', strong)}${TYPING}supply: {draft: {lift: 100 ft, suction: ${SUCTION}}}\nstaging: parallel\n`,
    );

  test('falls short, however strong the pumps, and says why', async () => {
    const answer = await checkLayout(layout());
    expect(answer.verdict).toBe('falls_short');
    expect(answer.stagings.map(({ verdict }) => verdict)).not.toContain('meets');
    const text = flat(textOf(answerDocument(answer, 'us')));
    expect(text).toMatch(
      /^FALLS SHORT of the requirement of the layout in parallel: 100 gpm cannot be had: the inlet of pump a would have to stand below -\d+ psi, where water boils/,
    );
    expect(text).toContain('cannot be');
  });

  test('prints no reading below a vacuum, in text or for a program', async () => {
    const answer = await checkLayout(layout());
    const text = textOf(answerDocument(answer, 'us'));
    expect(readings(text).filter((psi) => psi < LEAST_PSI)).toEqual([]);
    expect(text).not.toMatch(/\d{3}(\.\d)? inHg/);
    expect(text).toMatch(/parallel \* +FALLS SHORT +cannot be +not told/);
    const json = checkJson.parse(toJson(answer, 'us'));
    expect(json.at_required_flow).toBeNull();
    expect(json.pumps.map(({ inlet_pressure, npsh_available }) => [inlet_pressure, npsh_available])).toEqual([
      [null, null],
      [null, null],
    ]);
  });

  test('stands at no height either', async () => {
    const { highestPlace } = await checkLayout(layout());
    expect(highestPlace?.stands).toBe('nowhere');
  });
});
