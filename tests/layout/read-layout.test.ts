import { mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterAll, describe, expect, it } from 'vitest';
import { parse, stringify } from 'yaml';
import { readLayout } from '../../src/layout/read-layout.js';
import { catalogue, ENGINE, layoutOf } from './support.js';

const folder = mkdtempSync(join(tmpdir(), 'layout-'));
afterAll(() => rmSync(folder, { recursive: true }));

const WHOLE = `
title: Everything that a layout can say
site:
  elevation: 4,300 ft
  air_temperature: 85 degF
  water_temperature: 60 degF
engine:
  name: Engine 614
  tank: {capacity: 500 gal, outlet_height: 1 ft}
  pumps:
    a: {model: twin, wear: 3 %, hours: 212 h}
    b:
      model:
        name: other
        rated_speed: 6,500 rpm
        points: [[0 gpm, 415 psi], [30 gpm, 385 psi], [60 gpm, 318 psi], [85 gpm, 228 psi], [105 gpm, 110 psi]]
        shape: monotone
        tested_at: {elevation: 0 ft, air_temperature: 59 degF}
        power: {rated: 23 hp, aspiration: natural, fuel: gasoline, burn: 2.1 gal/h}
        efficiency: [[30 gpm, 38 %], [60 gpm, 55 %], [85 gpm, 56 %]]
        npsh_required: [[30 gpm, 8 ft], [85 gpm, 15 ft]]
        limits: {inlet: 150 psi, casing: 600 psi}
        weight: 165 lb
  plumbing:
    intake: [{pipe: two-inch, length: 3 ft}]
    suction: {a: [{pipe: two-inch, length: 1 ft}], b: []}
    discharge: [{pipe: two-inch, length: 2 ft}, {check_valve: swing}]
    transfer: [{pipe: two-inch, length: 5 ft}]
    manifold: [{gauge: panel}]
    cooling: {orifice: 1/8 in}
  relief: {opens_at: 400 psi}
  outlets: {left: [], right: {pump: b, steps: [{pipe: two-inch, length: 1 ft}]}}
  hose_carried: [{hose: trunk, length: 1,000 ft}, {hose: lateral, length: 500 ft}]
  crew: 3
  gross_weight_rating: 26,000 lb
  weights: {chassis: 11,900 lb, body: 3,400 lb, crew: {weight: 750 lb, behind_front_axle: 5 ft}}
staging: series
throttle: {a: 100 %, b: 80 %}
supply: {draft: {lift: 10 ft, suction: [{hose: trunk, length: 20 ft}], strainer: strainer}}
typing: {scheme: table, class: heavy}
appliance_policy: wildland
terrain: [[0 ft, 0 ft], [4,000 ft, 1,100 ft]]
lay:
  left: [{hose: trunk, length: 100 ft}, {appliance: header}, {nozzle: fog}]
`;

const feet = (value: number) => expect.closeTo(value * 0.3048, 9);

describe('a layout', () => {
  const layout = layoutOf(WHOLE);

  it('is read whole, in SI', () => {
    expect(layout).toMatchObject({
      title: 'Everything that a layout can say',
      site: { elevation: feet(4300), air_temperature: expect.closeTo(302.594444, 6) },
      staging: 'series',
      throttle: { by: 'speed', a: 1, b: 0.8 },
      supply: {
        kind: 'draft',
        lift: feet(10),
        suction: [{ kind: 'hose', length: feet(20), label: 'hose 1 of suction hose' }],
        strainer: { id: 'strainer', appliance: { k: 2 } },
      },
      typing: { scheme: 'table', class: 'heavy', requirement: { pressure: expect.closeTo(1723689.323, 2) } },
      appliance_policy: 'wildland',
      files: ['layout.yaml'],
    });
  });

  it('has its engine', () => {
    expect(layout.engine).toMatchObject({
      name: 'Engine 614',
      tank: { capacity: expect.closeTo(1.892705892, 9), outlet_height: feet(1) },
      pumps: {
        a: { id: 'twin', modelName: 'twin', wear: 0.03, hours: 212 * 3600, path: ['engine', 'pumps', 'a'] },
        b: {
          modelName: 'other',
          wear: 0,
          model: { rated_speed: 6500, limits: { casing: expect.any(Number) } },
        },
      },
      plumbing: {
        intake: [{ kind: 'pipe', label: 'pipe 1 of intake' }],
        suction: { a: [{ label: 'pipe 1 of suction a' }], b: [] },
        discharge: {
          a: [
            { label: 'pipe 1 of discharge a' },
            { kind: 'check_valve', label: 'check valve 1 of discharge a' },
          ],
          b: [{ label: 'pipe 1 of discharge b' }, { kind: 'check_valve' }],
        },
        transfer: [{ kind: 'pipe' }],
        manifold: [{ kind: 'gauge' }],
        cooling: { orifice: expect.closeTo(0.003175, 12) },
      },
      relief: { opens_at: expect.closeTo(2757902.917, 2) },
      outlets: [
        { name: 'left', steps: [] },
        { name: 'right', pump: 'b', steps: [{ kind: 'pipe', label: 'pipe 1 of outlet right' }] },
      ],
      hose_carried: [
        { id: 'trunk', length: feet(1000), hose: { coefficient: 24 } },
        { id: 'lateral', length: feet(500) },
      ],
      crew: 3,
      gross_weight_rating: expect.closeTo(11793.40162, 5),
      weights: [
        { name: 'chassis', weight: expect.closeTo(5397.749, 2) },
        { name: 'body', weight: expect.closeTo(1542.214, 2) },
        { name: 'crew', weight: expect.closeTo(340.194, 2), behind_front_axle: feet(5) },
      ],
    });
  });

  it('has its lay by outlet, with the terrain under it and the policy in it', () => {
    expect(layout.lay).toMatchObject([
      {
        outlet: 'left',
        steps: [
          { kind: 'hose', rise: feet(27.5), riseBasis: 'terrain', label: 'hose 1 of left' },
          { kind: 'appliance', policy: 'wildland' },
          { kind: 'nozzle' },
        ],
      },
    ]);
  });

  it('needs little', () => {
    const short = layoutOf(ENGINE);
    expect(short).toMatchObject({
      title: 'Engine',
      site: {
        elevation: 0,
        air_temperature: expect.closeTo(288.15, 9),
        water_temperature: expect.closeTo(288.706, 3),
      },
      engine: { outlets: [], weights: [], plumbing: { manifold: [] } },
      staging: 'parallel',
      throttle: { by: 'speed', a: 1, b: 1 },
      supply: { kind: 'tank' },
      appliance_policy: 'engineering',
      lay: [],
    });
    expect(short.typing).toBeUndefined();
    expect(short.engine.crew).toBeUndefined();
    expect(short.engine.hose_carried).toBeUndefined();
  });

  it('takes a list of steps as the lay of the one outlet', () => {
    expect(layoutOf(`${ENGINE}\nlay: [{nozzle: fog}]`).lay).toMatchObject([{ outlet: 'outlet' }]);
    const named = ENGINE.replace('engine: {', 'engine: {outlets: {rear: []}, ');
    expect(layoutOf(`${named}\nlay: [{nozzle: fog}]`).lay).toMatchObject([{ outlet: 'rear' }]);
    expect(layoutOf(`${ENGINE}\nlay: []`).lay).toEqual([]);
  });

  it('of one pump runs on that', () => {
    expect(layoutOf(ENGINE.replace(', b: {model: twin}', '')).staging).toBe('a');
  });

  const SUPPLIES: [text: string, supply: object][] = [
    ['tank', { kind: 'tank' }],
    ['{draft: {lift: 10 ft}}', { kind: 'draft', suction: [] }],
    [
      '{hydrant: {static: 80 psi, residual: 60 psi, flow: 500 gpm}}',
      { kind: 'hydrant', flow: expect.closeTo(0.0315451, 6) },
    ],
    ['{relay: {pressure: 60 psi}}', { kind: 'relay', pressure: expect.closeTo(413685.4, 0) }],
  ];
  for (const [text, supply] of SUPPLIES) {
    it(`takes its water from ${text}`, () => {
      expect(layoutOf(`${ENGINE}\nsupply: ${text}`).supply).toMatchObject(supply);
    });
  }

  it('may hold a discharge pressure', () => {
    expect(layoutOf(`${ENGINE}\nthrottle: {discharge_pressure: 220 psi}`).throttle).toEqual({
      by: 'discharge_pressure',
      discharge_pressure: expect.closeTo(1516846.6, 0),
    });
  });

  it('may state its own requirement, under custom or plainly', () => {
    for (const typing of [
      '{custom: {flow: 150 gpm, pressure: 250 psi, crew: 2}}',
      '{flow: 150 gpm, pressure: 250 psi, crew: 2}',
    ]) {
      const { typing: asked } = layoutOf(`${ENGINE}\ntyping: ${typing}`);
      expect(asked).toMatchObject({ requirement: { crew: 2 } });
      expect(asked?.scheme).toBeUndefined();
    }
    expect(
      layoutOf(`${ENGINE}\ntyping: {scheme: table, class: open, pressure: 200 psi}`).typing,
    ).toMatchObject({
      pressure: expect.closeTo(1378951.46, 1),
    });
  });

  it('may copy parts of itself', () => {
    const [steps] = layoutOf(
      `${ENGINE}\nlay: [&one {hose: trunk, length: 50 ft}, *one, *one, {nozzle: fog}]`,
    ).lay.map((lay) => lay.steps);
    expect(steps).toHaveLength(4);
    expect(steps[2]).toMatchObject({ kind: 'hose', label: 'hose 3 of outlet', at: { line: 2, column: 13 } });
  });

  it('does not hang on the order of its keys', () => {
    const document = parse(WHOLE.replace(/(\d),(\d{3})/g, '$1$2'));
    const expected = JSON.stringify(withoutPlaces(layout));
    fc.assert(
      fc.property(fc.infiniteStream(fc.nat()), (numbers) => {
        const text = stringify(shuffled(document, numbers));
        const read = withoutPlaces(layoutOf(text));
        expect(sorted(read)).toEqual(sorted(JSON.parse(expected)));
      }),
      { numRuns: 20 },
    );
  });
});

function shuffled(value: unknown, numbers: Iterator<number>): unknown {
  if (Array.isArray(value)) return value.map((item) => shuffled(item, numbers));
  if (typeof value !== 'object' || value === null) return value;
  const ranked = Object.entries(value).map(([key, item]) => ({
    key,
    item,
    rank: numbers.next().value as number,
  }));
  ranked.sort((one, other) => one.rank - other.rank);
  return Object.fromEntries(ranked.map(({ key, item }) => [key, shuffled(item, numbers)]));
}

function withoutPlaces(layout: unknown): unknown {
  return JSON.parse(
    JSON.stringify(layout, (key, value) => (key === 'at' || key === 'table' ? undefined : value)),
  );
}

/** Lists of named things come in the order of the document, which says nothing. */
function sorted(value: unknown): unknown {
  if (Array.isArray(value)) {
    const items = value.map(sorted);
    const named = items.every(
      (item) => typeof item === 'object' && item !== null && 'name' in item && !('kind' in item),
    );
    return named
      ? items.sort((one, other) => JSON.stringify(one).localeCompare(JSON.stringify(other)))
      : items;
  }
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value)
      .sort(([one], [other]) => one.localeCompare(other))
      .map(([key, item]) => [key, sorted(item)]),
  );
}

describe('the engine in a file of its own', () => {
  const engine = ENGINE.replace('engine: ', '');

  it('is found beside the layout', () => {
    mkdirSync(join(folder, 'trucks'));
    writeFileSync(join(folder, 'trucks', 'engine.yaml'), engine);
    writeFileSync(join(folder, 'layout.yaml'), 'engine: trucks/engine.yaml\n');
    const { layout } = readLayout(join(folder, 'layout.yaml'), { catalogue });
    expect(layout.files).toEqual([join(folder, 'layout.yaml'), join(folder, 'trucks', 'engine.yaml')]);
    expect(layout.engine.pumps.a).toMatchObject({
      path: ['engine', 'pumps', 'a'],
      at: { file: join(folder, 'trucks', 'engine.yaml'), line: 1 },
    });
  });

  it('may lie anywhere', () => {
    writeFileSync(join(folder, 'trucks', 'up.yaml'), 'engine: ../far.yaml\n');
    writeFileSync(join(folder, 'far.yaml'), engine);
    expect(readLayout(join(folder, 'trucks', 'up.yaml'), { catalogue }).layout.engine.name).toBe('Engine');
    writeFileSync(join(folder, 'absolute.yaml'), `engine: ${join(folder, 'far.yaml')}\n`);
    expect(readLayout(join(folder, 'absolute.yaml'), { catalogue }).layout.engine.name).toBe('Engine');
  });
});

describe('the examples that ship', () => {
  const examples = new URL('../../data/examples/', import.meta.url).pathname;
  for (const name of readdirSync(examples).filter((file) => /^(?!.*engine).*\.yaml$/.test(file))) {
    it(`${name} is read without a problem`, () => {
      expect(readLayout(join(examples, name)).layout.title).not.toBe('');
    });
  }
});
