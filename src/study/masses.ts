import { massPerLength } from '../catalogue/schema/hose.js';
import type { Layout } from '../layout/layout.js';
import { waterDensity } from '../physics/water.js';

/** Weight of a person, kg: 250 lb for each seat. NFPA in-service weight items (now in NFPA 1900). */
export const SEAT = 250 * 0.45359237;

/** A weight that the truck carries, with its place where that is stated. */
export interface Mass {
  name: string;
  kind: 'stated' | 'water' | 'crew' | 'pumps' | 'hose';
  mass: number;
  /** m behind the front axle, and left of the middle. */
  behind?: number;
  left?: number;
}

/** What the loaded truck weighs as far as the layout tells, and what of it nothing states the weight of. */
export interface Weighed {
  masses: Mass[];
  /** `pump b`, `forestry-1.5`: the truck weighs more than the masses by these. */
  leftOut: string[];
}

/**
 * Everything that the loaded truck weighs: the weights that the layout states, and its water, pumps, hose and crew where no
 * stated weight names them. Of these, what has no weight is named rather than counted as nothing. Without a stated weight
 * nothing is known.
 */
export function weigh(layout: Layout): Weighed {
  const { engine } = layout;
  if (engine.weights.length === 0) return { masses: [], leftOut: [] };
  const stated = engine.weights.map(
    ({ name, weight, behind_front_axle, left_of_middle }): Mass => ({
      name,
      kind: kindOf(name),
      mass: weight,
      behind: behind_front_axle,
      left: left_of_middle,
    }),
  );
  // By their whole names: an empty water tank is no water, nor a hose bed hose.
  const named: Named = (...words) => engine.weights.some(({ name }) => words.includes(plainName(name)));
  const carried = [water, pumps, hose, crew].map((part) => part(layout, named));
  return {
    masses: [...stated, ...carried.flatMap(({ masses }) => masses)],
    leftOut: carried.flatMap(({ leftOut }) => leftOut),
  };
}

type Named = (...words: string[]) => boolean;

const ALL_NAMED: Weighed = { masses: [], leftOut: [] };
const missing = (...leftOut: string[]): Weighed => ({ masses: [], leftOut });

function water({ engine: { tank }, site }: Layout, named: Named): Weighed {
  if (named('water')) return ALL_NAMED;
  if (tank === undefined) return missing('water, as no tank is stated');
  const mass: Mass = {
    name: 'water',
    kind: 'water',
    mass: tank.capacity * waterDensity(site.water_temperature),
    behind: tank.behind_front_axle,
    left: tank.left_of_middle,
  };
  return { masses: [mass], leftOut: [] };
}

function pumps({ engine }: Layout, named: Named): Weighed {
  if (named('pump', 'pumps')) return ALL_NAMED;
  const found: Weighed = { masses: [], leftOut: [] };
  for (const [id, pump] of Object.entries(engine.pumps)) {
    const name = `pump ${id}`;
    if (pump === undefined || named(name)) continue;
    const { weight } = pump.model;
    if (weight === undefined) found.leftOut.push(name);
    else {
      const { behind_front_axle: behind, left_of_middle: left } = pump;
      found.masses.push({ name, kind: 'pumps', mass: weight, behind, left });
    }
  }
  return found;
}

function hose({ engine: { hose_carried } }: Layout, named: Named): Weighed {
  if (named('hose')) return ALL_NAMED;
  if (hose_carried === undefined) return missing('hose, of which none is stated');
  let mass = 0;
  const leftOut = new Set<string>();
  for (const { hose: kind, length, modelName } of hose_carried) {
    const each = massPerLength(kind);
    if (each === undefined) leftOut.add(modelName);
    else mass += each * length;
  }
  return { masses: mass > 0 ? [{ name: 'hose', kind: 'hose', mass }] : [], leftOut: [...leftOut] };
}

function crew({ engine: { crew: people } }: Layout, named: Named): Weighed {
  if (named('crew')) return ALL_NAMED;
  if (people === undefined) return missing('crew, of which none is stated');
  return { masses: people > 0 ? [{ name: 'crew', kind: 'crew', mass: people * SEAT }] : [], leftOut: [] };
}

/** A stated weight that is named for the crew or the water comes and goes with them. */
function kindOf(name: string): Mass['kind'] {
  const plain = plainName(name);
  return plain === 'crew' || plain === 'water' ? plain : 'stated';
}

/** Whether a stated weight is the crew's: by its whole name, as a crew cab is no crew. */
export const isCrew = (name: string): boolean => plainName(name) === 'crew';

const plainName = (name: string): string => name.trim().toLowerCase();
