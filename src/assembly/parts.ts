import { applianceLoss } from '../catalogue/schema/appliance.js';
import { frictionLaw } from '../catalogue/schema/friction.js';
import { localLoss } from '../catalogue/schema/local-loss.js';
import type { Step } from '../layout/step.js';
import type { LinkLaw } from '../network/network.js';
import { partOpenCoefficient } from '../physics/valve-part-open.js';
import { frictionLawOf, laminarFlow, localLossLaw, localResistance, quadratic, sumOfLaws } from './laws.js';
import type { Part } from './network-builder.js';
import type { Site } from './site.js';

export type PartStep = Extract<
  Step,
  { kind: 'hose' | 'pipe' | 'valve' | 'check_valve' | 'appliance' | 'branch' }
>;

const PART_KINDS: readonly string[] = ['hose', 'pipe', 'valve', 'check_valve', 'appliance', 'branch'];

export function isPartStep(step: Step): step is PartStep {
  return PART_KINDS.includes(step.kind);
}

/** What a step of plumbing loses, in the bore that water comes from. */
export function partOf(step: PartStep, boreBefore: number | undefined, site: Site): Part {
  const common = {
    kind: step.kind.replace('_', ' '),
    name: step.label,
    modelName: step.modelName,
    path: step.path,
    step,
  };
  switch (step.kind) {
    case 'hose': {
      const { hose, length, rise, lines } = step;
      const bore = hose.inside_diameter;
      const law = frictionLawOf(frictionLaw(hose), { bore, length, lines, minor: 0 }, site);
      return { ...common, law, rise, bore, lines, length };
    }
    case 'pipe': {
      const { pipe, length, rise, fittings } = step;
      const bore = pipe.inside_diameter;
      let minor = 0;
      let allowance = 0;
      for (const { fitting, count } of fittings) {
        const loss = localLoss(fitting);
        if (loss?.law === 'fixed') allowance += count * loss.loss;
        else if (loss && loss.law !== 'bands') minor += count * localResistance(loss, bore);
      }
      const oneWay = fittings.some(({ fitting }) => fitting.one_way);
      const friction = length > 0 || minor > 0 ? pipeLaw(step, bore, minor, site) : undefined;
      const fixed = localLossLaw({ law: 'fixed', loss: allowance }, bore, site);
      return { ...common, law: sumOfLaws(friction, fixed), rise, bore, length, oneWay };
    }
    case 'valve': {
      const { valve, open } = step;
      const bore = valve.inside_diameter ?? boreBefore;
      if (open === 0) return { ...common, shut: true, bore };
      const wide = localLoss(valve);
      const extra = valve.part_open ? partOpenCoefficient(valve.part_open, open) : 0;
      const throttled = extra > 0 ? localLossLaw({ law: 'k', k: extra }, bore, site) : undefined;
      return { ...common, law: sumOfLaws(wide && localLossLaw(wide, bore, site), throttled), bore };
    }
    case 'check_valve': {
      const bore = step.check_valve.inside_diameter ?? boreBefore;
      const loss = localLoss(step.check_valve);
      return { ...common, law: loss && localLossLaw(loss, bore, site), bore, oneWay: true };
    }
    default: {
      const model = step.kind === 'appliance' ? step.appliance : step.branch;
      const loss = applianceLoss(model, step.policy);
      const bore = model.inside_diameter ?? boreBefore;
      return { ...common, law: localLossLaw(loss, bore, site), bore, oneWay: model.one_way };
    }
  }
}

function pipeLaw(
  step: Extract<PartStep, { kind: 'pipe' }>,
  bore: number,
  minor: number,
  site: Site,
): LinkLaw {
  if (step.length === 0) return quadratic(minor, laminarFlow(bore, site));
  return frictionLawOf(frictionLaw(step.pipe), { bore, length: step.length, lines: 1, minor }, site);
}
