import type { Hazard } from './hazard.js';

/** A pump whose curve was not measured at no flow: its shutoff, on which every dead-headed pressure rests, is a guess. */
export const unmeasuredShutoff: Hazard = ({ cases }) => {
  const [first] = cases;
  return (first?.point.assembly.pumps ?? [])
    .filter((pump) => pump.curve.firstFlow > 0)
    .map((pump) => ({
      code: 'shutoff_not_measured',
      level: 'note',
      at: pump.name,
      limit: { value: pump.curve.firstFlow, dimension: 'flow' },
      message:
        'The curve of {at} starts at {limit}: its shutoff pressure is carried on from there, and every pressure with the water shut off rests on it',
      action:
        'Measure the pressure with nothing flowing, briefly and with the cooling line open, and add the point.',
      source:
        'general pump texts: shutoff cannot be told from a published curve (common practice, no source)',
    }));
};
