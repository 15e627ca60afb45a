import type { Caution } from './caution.js';
import type { Hazard, HazardFacts } from './hazard.js';
import { pastLimit } from './ledger-limit.js';

/** A relief valve or governor that is set above what the weakest part bears, or that opens while the engine works, or both. */
export const reliefSetting: Hazard = (facts): Caution[] => {
  const above = pastLimit(facts, 'relief_above_hose', ({ limit }) => ({
    level: 'warn',
    message: `{at} is set to {value}; ${limit.replace('setting, by ', '')} allows at most {limit}`,
    action: 'Set it to at most that figure before this hose is charged.',
  }));
  const opens = pastLimit(facts, 'relief_opens', ({ worstWhen }) => ({
    level: 'warn',
    message: `{at} is set to {limit}, and the header stands at {value} ${worstWhen}: water that is asked for runs back to the tank`,
    action: 'Set it higher, if hose and casings allow, or throttle down.',
  }));
  const { control } = facts;
  if (above.length === 0) return opens.map((one) => bounded(one, control));
  if (opens.length === 0) return above;
  // To lower it for the hose and to raise it for the flow would be two orders for one valve.
  return above.map((one) => ({ ...one, ...bothWays(one.message, control) }));
};

/** Raised no further than every part bears. */
function bounded(caution: Caution, control: HazardFacts['control']): Caution {
  const { needed, highest } = control ?? {};
  if (needed === undefined || highest === undefined) return caution;
  const most = { value: highest.pressure, dimension: 'pressure' as const };
  if (needed >= highest.pressure)
    return {
      ...caution,
      action:
        'Set it no higher than {most}, which {part} bears, and throttle down: no setting serves both that and the required flow.',
      values: { most, part: highest.by },
    };
  return {
    ...caution,
    action:
      'Set it between the {needed} that the required flow takes and the {most} that {part} bears, or throttle down.',
    values: { most, part: highest.by, needed: { value: needed, dimension: 'pressure' } },
  };
}

function bothWays(
  above: string,
  control: HazardFacts['control'],
): Pick<Caution, 'message' | 'action' | 'values'> {
  const { needed, highest } = control ?? {};
  const serves = needed !== undefined && highest !== undefined && needed < highest.pressure;
  const message = `${above}; at full throttle it opens all the same at the required flow`;
  return serves
    ? {
        message,
        action:
          'Set it to at most that figure, and throttle down until it shuts: the required flow takes {needed}.',
        values: { needed: { value: needed, dimension: 'pressure' } },
      }
    : {
        message,
        action:
          'Set it to at most that figure and throttle down. No setting serves both this hose and the required flow: work the hose at less, or carry stronger hose.',
        values: {},
      };
}
