import type { Layout } from '../../src/layout/layout.js';
import { readLayoutText } from '../../src/layout/read-layout.js';
import { operateLayout } from '../../src/study/operation.js';
import { checkLayout } from '../../src/study/rating.js';
import { catalogue } from '../support/layouts.js';

/** A pump of our own invention with power to spare at any height that is looked at. */
export const pump = () => ({
  name: 'demo-spare',
  rated_speed: '6000 rpm',
  points: [
    ['0 gpm', '400 psi'],
    ['40 gpm', '370 psi'],
    ['80 gpm', '300 psi'],
    ['120 gpm', '180 psi'],
  ],
  power: { rated: '60 hp', aspiration: 'turbocharged', fuel: 'diesel', burn: '2 gal/h' },
  efficiency: [
    ['40 gpm', '45 %'],
    ['80 gpm', '60 %'],
    ['120 gpm', '55 %'],
  ],
  npsh_required: [
    ['40 gpm', '5 ft'],
    ['120 gpm', '9 ft'],
  ],
  limits: { inlet: '450 psi', casing: '900 psi' },
  trapped_volume: '0.6 gal',
  weight: '200 lb',
});

/** Hose of our own, strong enough for what these pumps can do. */
export const hose = () => ({
  name: 'stout hose',
  nominal: '1.5 in',
  inside_diameter: '1.6 in',
  coefficient: 24,
  limits: { service_test: '600 psi' },
});

export const nozzle = () => ({
  nozzle: { kind: 'smooth_bore', bore: '3/8 in', working: { from: '40 psi', to: '400 psi' } },
  name: 'tip',
});

// biome-ignore lint/suspicious/noExplicitAny: a document that tests change where they please
export type Loose = any;

/** An engine and a lay that nothing is wrong with. All figures are invented. */
export function sound(): Loose {
  return {
    title: 'a sound engine',
    site: { elevation: '500 ft', air_temperature: '70 degF' },
    engine: {
      tank: {
        capacity: '500 gal',
        outlet_height: '2 ft',
        behind_front_axle: '10 ft',
        left_of_middle: '0 in',
      },
      pumps: {
        a: { model: pump(), hours: '100 h', behind_front_axle: '14 ft' },
        b: { model: pump(), hours: '100 h', behind_front_axle: '14 ft' },
      },
      plumbing: {
        intake: [{ pipe: { inside_diameter: '4 in', roughness: '0.0018 in' }, length: '3 ft' }],
        suction: [{ pipe: { inside_diameter: '3 in', roughness: '0.0018 in' }, length: '3 ft' }],
        discharge: [
          { pipe: { inside_diameter: '2 in', roughness: '0.0018 in' }, length: '3 ft' },
          { check_valve: { k: 2, inside_diameter: '2 in' } },
        ],
        transfer: [{ pipe: { inside_diameter: '2.5 in', roughness: '0.0018 in' }, length: '3 ft' }],
        manifold: [
          { pipe: { inside_diameter: '2.5 in', roughness: '0.0018 in' }, length: '3 ft' },
          { gauge: 'panel', range: '600 psi' },
        ],
        cooling: { orifice: '1/8 in' },
      },
      relief: { opens_at: '420 psi' },
      crew: 3,
      wheelbase: '16 ft',
      gross_weight_rating: '26000 lb',
      axle_ratings: { front: '12000 lb', rear: '19000 lb' },
      weights: {
        chassis: { weight: '12000 lb', behind_front_axle: '6 ft' },
        crew: { weight: '750 lb', behind_front_axle: '2 ft' },
      },
    },
    staging: 'parallel',
    typing: { custom: { flow: '120 gpm', pressure: '200 psi' } },
    lay: [{ hose: hose(), length: '300 ft', rise: '20 ft' }, nozzle()],
  };
}

export function read(document: Loose): Layout {
  return readLayoutText(JSON.stringify(document), 'layout.yaml', { catalogue }).layout;
}

export const changed = (change: (document: Loose) => void): Loose => {
  const document = sound();
  change(document);
  return document;
};

export const checked = (document: Loose, ledger: 'tightest' | 'all' = 'all') =>
  checkLayout(read(document), { ledger });
export const operated = (document: Loose) => operateLayout(read(document));
