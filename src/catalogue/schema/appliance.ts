import * as z from 'zod';
import { quantity } from '../../quantity/schema.js';
import { exactlyOne } from './exclusive.js';
import { LOCAL_LOSS_KEYS, type LocalLoss, localLoss, localLossKeys, lossBore, oneWay } from './local-loss.js';
import { description } from './text.js';

/**
 * The trade's three rules for what an appliance costs, which conflict by design: `structural` 0, 10 or 25 psi by flow and
 * kind, `wildland` 5 psi each, `engineering` only what is known of the part itself.
 */
export const APPLIANCE_POLICIES = ['structural', 'wildland', 'engineering'] as const;
export type AppliancePolicy = (typeof APPLIANCE_POLICIES)[number];
/** What holds where a layout names no policy; a report states it. */
export const DEFAULT_APPLIANCE_POLICY: AppliancePolicy = 'engineering';

const bands = () =>
  z
    .array(
      z.strictObject({ from: quantity('flow', { atLeast: 0 }), loss: quantity('pressure', { atLeast: 0 }) }),
    )
    .min(1)
    .superRefine((rows, context) => {
      if (rows[0]?.from !== 0)
        context.addIssue({
          code: 'custom',
          path: [0, 'from'],
          message: 'the first band is wanted from 0 gpm',
        });
      for (let i = 1; i < rows.length; i++)
        if (rows[i].from <= rows[i - 1].from)
          context.addIssue({ code: 'custom', path: [i, 'from'], message: 'bands are wanted in rising flow' });
    })
    .optional()
    .meta({ description: 'A fixed loss by bands of flow: from this flow up, this loss' });

const ruleSchema = () =>
  z
    .strictObject({ ...localLossKeys, ...lossBore, bands: bands() })
    .check(exactlyOne([...LOCAL_LOSS_KEYS, 'bands'], 'a law of loss'));

const policies = () =>
  z
    .strictObject({ structural: ruleSchema(), wildland: ruleSchema(), engineering: ruleSchema() })
    .optional()
    .meta({ description: 'What the part costs by each rule of the trade' });

const partOfAnyKind = () =>
  z
    .strictObject({ ...description, ...localLossKeys, ...lossBore, ...oneWay, policies: policies() })
    .check(exactlyOne([...LOCAL_LOSS_KEYS, 'policies'], 'a law of loss'));

export const applianceSchema = z.lazy(() => partOfAnyKind().meta({ title: 'appliance' }));

export type Appliance = z.infer<typeof applianceSchema>;

/** A wye, tee or manifold: what its inlet costs whichever way the water goes on. */
export const branchSchema = z.lazy(() => partOfAnyKind().meta({ title: 'branch' }));

export type Branch = z.infer<typeof branchSchema>;

/** What an appliance or branch costs by a policy; one with a loss of its own costs that by any. */
export function applianceLoss(part: Appliance | Branch, policy: AppliancePolicy): LocalLoss {
  const loss = localLoss(part.policies ? part.policies[policy] : part);
  if (!loss) throw new TypeError('an appliance without a law of loss passed its schema');
  return loss;
}
