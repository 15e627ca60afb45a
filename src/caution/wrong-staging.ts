import { STAGING_WORDS } from '../assembly/staging-words.js';
import type { Hazard } from './hazard.js';

/** A staging that falls short where another one of the same pumps makes it: parallel for want of pressure, series for want of flow. */
export const wrongStaging: Hazard = ({ pumpVerdict, judged }) => {
  if (judged === undefined || pumpVerdict === 'meets') return [];
  const own = judged.stagings.find(({ staging }) => staging === judged.staging);
  const better = judged.stagings.find(
    ({ staging, verdict }) => verdict === 'meets' && staging !== judged.staging,
  );
  if (own === undefined || own.verdict === 'meets' || better?.atRequiredFlow === undefined) return [];
  const short = own.reachable ? 'pressure' : 'flow';
  return [
    {
      code: 'wrong_staging',
      level: 'warn',
      at: 'the staging',
      message: `In ${STAGING_WORDS[own.staging]} the pumps fall short of ${short}; in ${STAGING_WORDS[better.staging]} they give {better} at the required flow, {over} over what is asked`,
      action: `Plumb or set them as ${STAGING_WORDS[better.staging]}, within the limits of casings, seals and hose.`,
      values: {
        better: { value: better.atRequiredFlow.pressure, dimension: 'pressure' },
        over: { value: better.atRequiredFlow.margin, dimension: 'pressure' },
      },
      source: 'series: heads add at one flow; parallel: flows add at one head (general pump texts)',
    },
  ];
};
