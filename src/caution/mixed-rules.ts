import { frictionLaw } from '../catalogue/schema/friction.js';
import type { HoseStep, Step } from '../layout/step.js';
import { HAZEN_WILLIAMS_EXPONENT, hazenWilliamsResistance } from '../physics/hazen-williams.js';
import { hoseHeadResistance } from '../physics/hose-coefficient.js';
import { type Caution, literal } from './caution.js';
import type { Hazard } from './hazard.js';

/** Smoothness of hose by Hazen-Williams, which its published coefficients imply at the bore that it swells to. */
const HOSE_SMOOTHNESS = 140;
/** A coefficient this many times off what its bore loses is in other units: per foot, or per gpm. Published ones lie within 2. */
const SLIP = 5;

/** Rule sets mixed in one sum, an edition that another has replaced, and coefficients in other units than the rule's. */
export const mixedRules: Hazard = ({ layout }) => {
  const steps = layout.lay.flatMap((lay) => lay.steps.flatMap(within));
  const hoses = steps.filter((step): step is HoseStep => step.kind === 'hose');
  return [...mixedFriction(hoses), ...oldEdition(layout.typing?.table), ...hoses.flatMap(slipped)];
};

function within(step: Step): Step[] {
  if (step.kind === 'branch') return [step, ...step.to.flatMap((line) => line.steps.flatMap(within))];
  if (step.kind === 'siamese') return [step, ...step.siamese.flatMap((line) => line.flatMap(within))];
  return [step];
}

const LAWS = {
  coefficient: 'a coefficient',
  hazen_williams: 'Hazen-Williams',
  darcy: 'Darcy-Weisbach',
} as const;

function mixedFriction(hoses: readonly HoseStep[]): Caution[] {
  const laws = [...new Set(hoses.map(({ hose }) => frictionLaw(hose).law))];
  if (laws.length < 2) return [];
  return [
    {
      code: 'mixed_friction_laws',
      level: 'note',
      at: 'the lay',
      message: `The hose of the lay loses by ${laws.map((law) => LAWS[law]).join(' and by ')}: rule sets that were never fitted together`,
      action: 'State all hose by one law, best by coefficients measured on the hose itself.',
      source: 'rule sets of friction are chosen and not mixed (common practice, no source)',
    },
  ];
}

function oldEdition(
  table: { title: string; edition: string; superseded_by?: string } | undefined,
): Caution[] {
  if (table?.superseded_by === undefined) return [];
  return [
    {
      code: 'old_edition',
      level: 'note',
      at: 'the typing',
      message: literal(
        `The table asked for, ${table.title} (${table.edition}), has been replaced by ${table.superseded_by}`,
      ),
      action: `Check against ${literal(table.superseded_by)}, unless the agency pins the older edition.`,
      source: 'notes of the typing tables',
    },
  ];
}

function slipped({ label, hose }: HoseStep): Caution[] {
  const law = frictionLaw(hose);
  if (law.law !== 'coefficient') return [];
  const stated = hoseHeadResistance(law.coefficient, 1);
  const usual =
    hazenWilliamsResistance(HOSE_SMOOTHNESS, hose.inside_diameter, 1) *
    USUAL_FLOW ** (HAZEN_WILLIAMS_EXPONENT - 2);
  const ratio = stated / usual;
  if (ratio < SLIP && ratio > 1 / SLIP) return [];
  return [
    {
      code: 'coefficient_slip',
      level: 'warn',
      at: label,
      message: `The coefficient of {at} makes it lose ${Number(ratio.toPrecision(2))} times what its bore would: it may be stated per foot or per gpm`,
      action: 'State it for hundreds of gpm and hundreds of feet: 24 for 1-1/2 in hose.',
      source:
        'published coefficients imply Hazen-Williams 120 to 140 at the bore that hose swells to (computed)',
    },
  ];
}

/** Flow at which the two laws are held against each other, m3/s (100 gpm): one goes with the square, the other with 1.852. */
const USUAL_FLOW = 0.0063;
