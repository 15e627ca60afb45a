import type { Hazard } from './hazard.js';

/** A gauge on the truck that reads the required pressure while the place where it is judged does not. */
export const judgedAtPanel: Hazard = ({ judged, cases, verdict }) => {
  if (judged === undefined || verdict === undefined || verdict.margin >= 0) return [];
  const [working] = cases;
  const { required, margin } = verdict;
  const named = working.point.assembly.gauges.map(({ name, place }) => ({
    name,
    pressure: working.point.gaugePressure(place),
  }));
  const outlets = working.point.assembly.outlets.map(({ name, place }) => ({
    name,
    pressure: working.point.gaugePressure(place),
  }));
  const deceived = [...named, ...outlets].find(({ pressure }) => pressure >= required);
  if (deceived === undefined) return [];
  return [
    {
      code: 'judged_at_panel',
      level: 'warn',
      at: deceived.name,
      value: { value: deceived.pressure, dimension: 'pressure' },
      limit: { value: required, dimension: 'pressure' },
      message: `{at} reads {value} at the required flow, and looks like a pass; ${judged.judgedAt}, where it is judged, is {short} short of {limit}`,
      action: 'Read the gauge at the orifice or nozzle, and shorten or widen what lies between.',
      values: { short: { value: -margin, dimension: 'pressure' } },
      source: 'Northern Rockies inspection job aid (2010): one gauge, in the tee upstream of the orifice',
    },
  ];
};
