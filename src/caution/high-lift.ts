import { siteOf } from '../assembly/site.js';
import type { Layout } from '../layout/layout.js';
import { attainableLift, theoreticalLift } from '../physics/npsh.js';
import type { Hazard } from './hazard.js';

/** A lift above what a pump in good order attains at the site: it may not prime, whatever the sum of the losses says. */
export const highLift: Hazard = ({ layout }) => {
  const over = overAttainable(layout);
  if (over === undefined) return [];
  const { lift, limit } = over;
  return [
    {
      code: 'lift_over_attainable',
      level: 'warn',
      at: 'the draft',
      value: { value: lift, dimension: 'length' },
      limit: { value: limit, dimension: 'length' },
      message: 'The lift is {value}; {limit} is what a pump in good order attains at this elevation',
      action: 'Set the pump lower, or move the water up with a floating pump or a portable tank.',
      source: 'NWCG Firefighter Math 3.5: two thirds of the theoretical lift',
    },
  ];
};

/** The lift of a layout and what is attainable at its site, m, where the first is more. */
export function overAttainable({ supply, site }: Layout): { lift: number; limit: number } | undefined {
  if (supply.kind !== 'draft') return undefined;
  const { atmosphericPressure, waterDensity } = siteOf(site);
  const limit = attainableLift(theoreticalLift(atmosphericPressure, waterDensity));
  return supply.lift > limit ? { lift: supply.lift, limit } : undefined;
}
