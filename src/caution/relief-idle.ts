import type { Hazard } from './hazard.js';

/** A relief valve where the discharges meet, in a staging in which they do not: it guards neither pump. */
export const reliefIdle: Hazard = ({ layout }) =>
  layout.staging === 'separate' && layout.engine.relief?.at === 'manifold'
    ? [
        {
          code: 'relief_not_in_use',
          level: 'warn',
          at: 'the relief valve',
          value: { value: layout.engine.relief.opens_at, dimension: 'pressure' },
          message:
            '{at}, set to {value}, stands where the discharges meet; with an outlet for each pump they do not meet, and it guards neither of them',
          action:
            'Give each pump a valve of its own (at: pump under relief), or hold the pressure by governor.',
          source: 'where the valve stands, by the layout',
        },
      ]
    : [];
