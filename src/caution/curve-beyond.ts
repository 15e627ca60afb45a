import type { AssembledPump } from '../assembly/assembly.js';
import { pressureOfHeight } from '../physics/elevation.js';
import { waterPower } from '../physics/pump-power.js';
import type { Caution } from './caution.js';
import type { Hazard } from './hazard.js';

/** A pump file at odds with itself: a curve that its own casing does not bear, or that takes more power than its engine has. */
export const curveBeyond: Hazard = ({ cases }) => {
  const [first] = cases;
  if (first === undefined) return [];
  const { pumps, site } = first.point.assembly;
  return pumps.flatMap((pump) => [
    ...overCasing(pump, site.waterDensity),
    ...overPower(pump, site.waterDensity),
  ]);
};

function overCasing({ name, model, curve }: AssembledPump, density: number): Caution[] {
  const casing = model.limits?.casing;
  const out = { head: 0, slope: 0 };
  curve.evaluate(0, out);
  const value = pressureOfHeight(out.head, density);
  if (casing === undefined || value <= casing) return [];
  return [
    {
      code: 'curve_over_casing',
      level: 'warn',
      at: name,
      value: { value, dimension: 'pressure' },
      limit: { value: casing, dimension: 'pressure' },
      message: 'By its own file {at} makes {value} with nothing flowing, and its casing bears {limit}',
      action:
        'Look for a slip in the curve or in the limit; if both are right, never shut it off at full speed.',
      source: 'points of the pump curve against the limit stated for the pump',
    },
  ];
}

function overPower({ name, model, curve }: AssembledPump, density: number): Caution[] {
  const rated = model.power?.rated;
  if (rated === undefined) return [];
  const powers = model.points.map(([flow]) => {
    const out = { head: 0, slope: 0 };
    curve.evaluate(flow, out);
    return { flow, power: waterPower(flow, out.head, density) };
  });
  const most = powers.reduce((kept, one) => (one.power > kept.power ? one : kept));
  if (most.power <= rated) return [];
  return [
    {
      code: 'curve_over_power',
      level: 'warn',
      at: name,
      value: { value: most.power, dimension: 'power' },
      limit: { value: rated, dimension: 'power' },
      message:
        'By its own file {at} puts {value} into the water at {flow}, and its engine is rated at {limit}: both cannot be',
      action: 'Look for a slip in the curve, its units or the power of the engine.',
      values: { flow: { value: most.flow, dimension: 'flow' } },
      source: 'water power = density x g x flow x head; the file of the pump',
    },
  ];
}
