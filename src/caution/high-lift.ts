import { siteOf } from '../assembly/site.js';
import { attainableLift, theoreticalLift } from '../physics/npsh.js';
import type { Hazard } from './hazard.js';

/** A lift above what a pump in good order attains at the site: it may not prime, whatever the sum of the losses says. */
export const highLift: Hazard = ({ layout }) => {
  const { supply } = layout;
  if (supply.kind !== 'draft') return [];
  const { atmosphericPressure, waterDensity } = siteOf(layout.site);
  const limit = attainableLift(theoreticalLift(atmosphericPressure, waterDensity));
  if (supply.lift <= limit) return [];
  return [
    {
      code: 'lift_over_attainable',
      level: 'warn',
      at: 'the draft',
      value: { value: supply.lift, dimension: 'length' },
      limit: { value: limit, dimension: 'length' },
      message: 'The lift is {value}; {limit} is what a pump in good order attains at this elevation',
      action: 'Set the pump lower, or move the water up with a floating pump or a portable tank.',
      source: 'NWCG Firefighter Math 3.5: two thirds of the theoretical lift',
    },
  ];
};
