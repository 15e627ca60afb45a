import { describe, expect, it } from 'vitest';
import * as z from 'zod';
import { KINDS, type Kind, SCHEMAS } from '../../src/catalogue/kind.js';
import { frictionLaw } from '../../src/catalogue/schema/friction.js';
import { contentPerLength, hoseSchema, massPerLength } from '../../src/catalogue/schema/hose.js';
import { localLoss } from '../../src/catalogue/schema/local-loss.js';
import { boreOf, nozzleSchema, type SmoothBore } from '../../src/catalogue/schema/nozzle.js';
import { typingChoiceSchema, typingClassSchema, typingPoints } from '../../src/catalogue/schema/typing.js';

const INCH = 0.0254;
const FOOT = 0.3048;
const POUND = 0.45359237;
const GALLON = 231 * INCH ** 3;

function problems(schema: z.ZodType, input: unknown): { path: string; message: string }[] {
  const parsed = schema.safeParse(input);
  return (parsed.error?.issues ?? []).map(({ path, message }) => ({ path: path.join('.'), message }));
}

const pump = {
  points: [
    ['0 gpm', '415 psi'],
    ['60 gpm', '318 psi'],
    ['105 gpm', '110 psi'],
  ],
};

describe("a layout's own mapping", () => {
  const accepted: [Kind, unknown][] = [
    ['hose', { inside_diameter: '1.5 in', coefficient: 24 }],
    ['hose', { inside_diameter: '1.5 in', roughness: '0.002 in' }],
    ['hose', { inside_diameter: '1.61 in', hazen_williams: 140 }],
    ['pipe', { inside_diameter: '2.067 in', roughness: '0.0018 in' }],
    ['pipe', { inside_diameter: '2.067 in', hazen_williams: 120 }],
    ...(['appliance', 'branch', 'check_valve', 'valve'] as const).flatMap((kind): [Kind, unknown][] => [
      [kind, { loss: '5 psi' }],
      [kind, { k: 3, inside_diameter: '2 in' }],
      [kind, { flow_coefficient: 60 }],
    ]),
    ['nozzle', { kind: 'smooth_bore', bore: '3/8 in', discharge_coefficient: 0.995 }],
    ['nozzle', { kind: 'fog', flow: '20 gpm', pressure: '100 psi' }],
    ['nozzle', { kind: 'automatic', pressure: '100 psi', flow_from: '10 gpm', flow_to: '60 gpm' }],
    ['nozzle', { kind: 'sharp_orifice', bore: '0.716 in', tee_bore: '1.5 in' }],
    ['pump', pump],
  ];
  for (const [kind, mapping] of accepted)
    it(`of ${kind} may be ${JSON.stringify(mapping)}`, () => {
      expect(problems(SCHEMAS[kind], mapping)).toEqual([]);
    });

  const refused: [string, Kind, unknown, string, RegExp][] = [
    ['a misspelt key', 'hose', { inside_diameter: '1.5 in', coeficient: 24 }, '', /"coeficient"/],
    [
      'no friction law',
      'hose',
      { inside_diameter: '1.5 in' },
      '',
      /a friction law is wanted: coefficient, roughness or/,
    ],
    [
      'two friction laws',
      'hose',
      { inside_diameter: '1.5 in', coefficient: 24, hazen_williams: 140 },
      'hazen_williams',
      /keep one/,
    ],
    ['a coefficient on a pipe', 'pipe', { inside_diameter: '2 in', coefficient: 2 }, '', /"coefficient"/],
    [
      'a bore without a unit',
      'pipe',
      { inside_diameter: 2, roughness: '0.0018 in' },
      'inside_diameter',
      /2 in/,
    ],
    [
      'a pressure for a bore',
      'pipe',
      { inside_diameter: '2 psi', roughness: '0.0018 in' },
      'inside_diameter',
      /length/,
    ],
    ['no law of loss', 'valve', {}, '', /a law of loss wide open is wanted/],
    ['a nozzle of no known kind', 'nozzle', { kind: 'foggy' }, 'kind', /'fog'/],
    ['a smooth bore without a bore', 'nozzle', { kind: 'smooth_bore' }, '', /the bore is wanted/],
    [
      'an automatic nozzle of no range',
      'nozzle',
      { kind: 'automatic', pressure: '100 psi', flow_from: '10 gpm', flow_to: '10 gpm' },
      'flow_to',
      /more is wanted than flow_from/,
    ],
    [
      'a tee that is no wider than its orifice',
      'nozzle',
      { kind: 'sharp_orifice', bore: '1.5 in', tee_bore: '1.5 in' },
      'tee_bore',
      /more is wanted/,
    ],
    ['a curve of two points', 'pump', { points: pump.points.slice(0, 2) }, 'points', /at least three points/],
    [
      'a curve that ends no lower than it starts',
      'pump',
      {
        points: [
          ['0 gpm', '300 psi'],
          ['30 gpm', '310 psi'],
          ['60 gpm', '300 psi'],
        ],
      },
      'points.2.1',
      /less pressure/,
    ],
    [
      'a power shape through points that no power curve meets',
      'pump',
      {
        points: [
          ['0 gpm', '300 psi'],
          ['30 gpm', '310 psi'],
          ['60 gpm', '200 psi'],
        ],
        shape: 'power',
      },
      'shape',
      /no power curve/,
    ],
    [
      'a curve whose flow does not rise',
      'pump',
      { points: [...pump.points, ['105 gpm', '90 psi']] },
      'points.3.0',
      /more flow is wanted/,
    ],
    [
      'a power curve of four points',
      'pump',
      { shape: 'power', points: [...pump.points, ['110 gpm', '90 psi']] },
      'shape',
      /three points/,
    ],
    [
      'an appliance with half its policies',
      'appliance',
      { policies: { wildland: { loss: '5 psi' } } },
      'policies.structural',
      /./,
    ],
    [
      'bands that do not start at no flow',
      'appliance',
      {
        policies: {
          structural: { bands: [{ from: '350 gpm', loss: '10 psi' }] },
          wildland: { loss: '5 psi' },
          engineering: { loss: '0 psi' },
        },
      },
      'policies.structural.bands.0.from',
      /0 gpm/,
    ],
    [
      'openings out of order',
      'valve',
      {
        k: 1,
        part_open: [
          ['50 %', 4],
          ['100 %', 0],
        ],
      },
      'part_open.1.0',
      /wide to narrow/,
    ],
  ];
  for (const [name, kind, mapping, path, message] of refused)
    it(`may not be ${name}`, () => {
      expect(problems(SCHEMAS[kind], mapping)).toContainEqual({
        path,
        message: expect.stringMatching(message),
      });
    });

  it('has all its problems told at once', () => {
    expect(problems(hoseSchema, { inside_diameter: 1.5, colour: 'red' }).map(({ path }) => path)).toEqual([
      'inside_diameter',
      '',
      '',
    ]);
  });

  for (const wrong of [null, 'forestry', 3, [], true])
    for (const kind of KINDS)
      it(`of ${kind} may not be ${JSON.stringify(wrong)}, and saying so throws nothing`, () => {
        expect(problems(SCHEMAS[kind], wrong)).not.toEqual([]);
      });

  for (const kind of KINDS)
    it(`of ${kind} can be told to an editor as JSON Schema`, () => {
      const schema = z.toJSONSchema(SCHEMAS[kind], { target: 'draft-07', io: 'input' });
      expect(schema.title).toMatch(kind === 'typing' ? /typing/ : new RegExp(kind));
    });
});

describe('a model', () => {
  it('of hose tells its law, its weight and what it holds', () => {
    const hose = hoseSchema.parse({
      inside_diameter: '1-1/2 in',
      coefficient: 24,
      weight: { mass: '11.8 lb', per: '100 ft' },
    });
    expect(frictionLaw(hose)).toEqual({ law: 'coefficient', coefficient: 24 });
    expect(massPerLength(hose)).toBeCloseTo((11.8 * POUND) / (100 * FOOT), 12);
    expect((contentPerLength(hose) * 100 * FOOT) / GALLON).toBeCloseTo(9.18, 2);
  });

  it('of hose has no weight where none is given', () => {
    expect(massPerLength(hoseSchema.parse({ inside_diameter: '1 in', coefficient: 150 }))).toBeUndefined();
  });

  it('of a fitting tells its one law of loss', () => {
    expect(localLoss({ friction_multiple: 30 })).toEqual({ law: 'friction_multiple', multiple: 30 });
    expect(localLoss({ k: 0, inside_diameter: 0.05 })).toEqual({ law: 'k', k: 0, insideDiameter: 0.05 });
    expect(localLoss({})).toBeUndefined();
  });

  it('of a nozzle with tips has the first bore unless a step says otherwise', () => {
    const nozzle = nozzleSchema.parse({ kind: 'smooth_bore', tips: ['3/16 in', '3/8 in'] }) as SmoothBore;
    expect(boreOf(nozzle)).toBeCloseTo((3 / 16) * INCH, 12);
    expect(nozzle.discharge_coefficient).toBe(0.995);
  });

  it('of a typing class tells its points, one or several', () => {
    const one = typingClassSchema.parse({ flow: '150 gpm', pressure: '250 psi' });
    expect(typingPoints(one)).toHaveLength(1);
    const two = typingClassSchema.parse({
      points: [
        { name: '100 %', flow: '500 gpm', pressure: '150 psi', net: true },
        { name: '70 %', flow: '350 gpm', pressure: '200 psi', net: true },
      ],
    });
    expect(typingPoints(two).map(({ name }) => name)).toEqual(['100 %', '70 %']);
  });

  it('of a typing choice is a class of a table or a custom one, and not both', () => {
    expect(problems(typingChoiceSchema, { scheme: 'nwcg', class: 'engine-3' })).toEqual([]);
    expect(problems(typingChoiceSchema, { custom: { flow: '150 gpm', pressure: '250 psi' } })).toEqual([]);
    expect(problems(typingChoiceSchema, { scheme: 'nwcg' })[0].message).toMatch(/class is wanted/);
    expect(
      problems(typingChoiceSchema, { scheme: 'nwcg', class: 'x', custom: { flow: '9 gpm' } })[0].path,
    ).toBe('custom');
  });
});
