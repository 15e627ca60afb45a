import type { Statement } from '../caution/caution.js';
import type { Layout } from '../layout/layout.js';
import type { AxleCase, AxlesAnswer } from './engine-answer.js';
import { isCrew, type Mass, SEAT, weigh } from './masses.js';

const LEVELS = [1, 0.5, 0] as const;

/** Loads of the axles and side balance with the tank full, half full and empty, crew aboard and not. */
export function axlesOf(layout: Layout): AxlesAnswer | undefined {
  const { masses, leftOut } = weigh(layout);
  if (masses.length === 0) return undefined;
  const { engine } = layout;
  const { wheelbase } = engine;
  const unplaced = masses
    .filter(({ behind, mass }) => behind === undefined && mass > 0)
    .map(({ name }) => name);
  const sides = masses.some(({ left }) => left !== undefined);
  const cases = [true, false].flatMap((crew) =>
    LEVELS.map((tank) => loadsOf(masses, { tank, crew, wheelbase, whole: unplaced.length === 0, sides })),
  );
  return {
    cases,
    ratings: { gross: engine.gross_weight_rating, ...engine.axle_ratings },
    unplaced,
    leftOut,
    wheelbaseStated: wheelbase !== undefined,
    rules: rulesOf(layout, masses),
  };
}

function loadsOf(
  masses: readonly Mass[],
  given: { tank: number; crew: boolean; wheelbase?: number; whole: boolean; sides: boolean },
): AxleCase {
  const { tank, crew, wheelbase, whole, sides } = given;
  const part = ({ kind }: Mass) => (kind === 'water' ? tank : kind === 'crew' && !crew ? 0 : 1);
  const sum = (arm: (mass: Mass) => number) =>
    masses.reduce((total, mass) => total + part(mass) * mass.mass * arm(mass), 0);
  const gross = sum(() => 1);
  const rear = wheelbase && sum(({ behind = 0 }) => behind) / wheelbase;
  const placed = sum(({ behind }) => (behind === undefined ? 0 : 1));
  return {
    tank,
    crew,
    gross,
    ...(rear === undefined
      ? {}
      : whole
        ? { front: gross - rear, rear }
        : { frontAtLeast: placed - rear, rearAtLeast: rear }),
    leftOfMiddle: sides ? sum(({ left = 0 }) => left) / gross : undefined,
  };
}

function rulesOf({ engine }: Layout, masses: readonly Mass[]): Statement[] {
  const rules: Statement[] = [];
  const crewStated = engine.weights.some(({ name }) => isCrew(name));
  if (crewStated) {
    rules.push({ template: 'Crew as the layout states its weight', source: 'stated in the layout' });
  } else if (engine.crew) {
    rules.push({
      template: 'Crew at {seat} a seat',
      values: { seat: { value: SEAT, dimension: 'mass' } },
      source: 'NFPA in-service weight items: 250 lb per seat',
    });
  }
  rules.push({
    template:
      'Equipment as the layout states it; the rule is the greatest of the table, the list and the figure of the purchaser',
    source: 'NFPA in-service weight items, miscellaneous allowance',
  });
  if (masses.some(({ left }) => left !== undefined) && masses.some(({ left }) => left === undefined)) {
    rules.push({
      template: 'Weights whose side is not stated are taken as on the middle of the truck',
      source: 'common practice, no source',
    });
  }
  return rules;
}
