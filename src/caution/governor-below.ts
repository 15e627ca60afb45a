import type { Hazard } from './hazard.js';

/** A governor set to hold less than the typing asks for: the verdict is judged at full throttle, which it would not give. */
export const governorBelow: Hazard = ({ layout, verdict }) => {
  const { throttle } = layout;
  if (verdict === undefined || throttle.by !== 'discharge_pressure') return [];
  const value = throttle.discharge_pressure;
  if (value >= verdict.required) return [];
  return [
    {
      code: 'governor_below_requirement',
      level: 'warn',
      at: 'the governor',
      value: { value, dimension: 'pressure' },
      limit: { value: verdict.required, dimension: 'pressure' },
      message:
        'The governor is set to hold {value}, and the typing asks for {limit}: the verdict is judged at full throttle, which that setting does not give',
      action:
        'Set the governor higher for the test, or run the test by hand throttle, as the weakest hose allows.',
      source: 'NWCG PMS 447-1 (2003), Appendix C: the pump is tested with the throttle at its maximum',
    },
  ];
};
