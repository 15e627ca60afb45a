import { MOST_RISE, MOST_RISE_SOURCE } from '../limits/line-shut-limit.js';
import type { Caution } from './caution.js';
import type { Hazard } from './hazard.js';

/**
 * A pressure that rises by more than the rule allows when a line is shut: over the setting of the device that ought to hold
 * it, or, where there is none, over what stood there before. A nozzle that someone holds then kicks harder.
 */
export const lineShut: Hazard = ({ control }) => {
  if (control === undefined) return [];
  const { device, overSetting, lineShut: worst } = control;
  const limit = { value: MOST_RISE, dimension: 'pressure' as const };
  const cautions: Caution[] = [];
  if (device && overSetting !== undefined && overSetting > MOST_RISE) {
    cautions.push({
      code: 'rise_over_setting',
      level: 'warn',
      at: device.kind === 'relief' ? 'the relief valve' : 'the governor',
      value: { value: overSetting, dimension: 'pressure' },
      limit,
      message:
        'With everything shut the pressure stands {value} over the setting of {at}; the rule is {limit} at most',
      action:
        device.kind === 'relief'
          ? 'Fit a larger valve or a second one, or throttle down before a line is shut.'
          : 'Have the governor set or mended, or throttle down before a line is shut.',
      source: MOST_RISE_SOURCE,
    });
  }
  // A device holds the pumps; what it leaves of the rise at another nozzle, nobody else does.
  if (worst === undefined || worst.rise <= MOST_RISE || (device && !worst.held)) return cautions;
  const unheld = device ? '' : ', and no relief valve or governor holds it';
  cautions.push({
    code: 'line_shut_rise',
    level: worst.held ? 'warn' : 'note',
    at: worst.at,
    value: { value: worst.rise, dimension: 'pressure' },
    limit,
    message: `When ${worst.nozzle} is shut, the pressure at {at} rises by {value}; ${worst.held ? 'at a pump the rule allows {limit}' : 'the rule is {limit} at most'}${unheld}`,
    action: device
      ? 'Shut nozzles slowly and one at a time, and warn who holds the other lines; a wider trunk rises less.'
      : 'Set a relief valve or a governor, shut nozzles slowly, and throttle down before a line is shut.',
    source: MOST_RISE_SOURCE,
  });
  return cautions;
};
