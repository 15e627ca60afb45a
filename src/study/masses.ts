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

/**
 * Everything that the loaded truck weighs: the weights that the layout states, and its water, pumps, hose and crew where no
 * stated weight names them. Without a stated weight nothing is known.
 */
export function massesOf(layout: Layout): Mass[] {
  const { engine, site } = layout;
  if (engine.weights.length === 0) return [];
  // By their whole names: an empty water tank is no water, nor a hose bed hose.
  const named = (...words: string[]) => engine.weights.some(({ name }) => words.includes(plainName(name)));
  const masses: Mass[] = engine.weights.map(({ name, weight, behind_front_axle, left_of_middle }) => ({
    name,
    kind: kindOf(name),
    mass: weight,
    behind: behind_front_axle,
    left: left_of_middle,
  }));
  const { tank, pumps } = engine;
  if (tank && !named('water')) {
    masses.push({
      name: 'water',
      kind: 'water',
      mass: tank.capacity * waterDensity(site.water_temperature),
      behind: tank.behind_front_axle,
      left: tank.left_of_middle,
    });
  }
  if (!named('pump', 'pumps')) {
    for (const [name, pump] of Object.entries(pumps)) {
      if (!pump?.model.weight || named(`pump ${name}`)) continue;
      masses.push({
        name: `pump ${name}`,
        kind: 'pumps',
        mass: pump.model.weight,
        behind: pump.behind_front_axle,
        left: pump.left_of_middle,
      });
    }
  }
  if (!named('hose')) {
    const mass = (engine.hose_carried ?? []).reduce(
      (sum, { hose, length }) => sum + (massPerLength(hose) ?? 0) * length,
      0,
    );
    if (mass > 0) masses.push({ name: 'hose', kind: 'hose', mass });
  }
  if (engine.crew && !named('crew')) masses.push({ name: 'crew', kind: 'crew', mass: engine.crew * SEAT });
  return masses;
}

/** A stated weight that is named for the crew or the water comes and goes with them. */
function kindOf(name: string): Mass['kind'] {
  const plain = plainName(name);
  return plain === 'crew' || plain === 'water' ? plain : 'stated';
}

const plainName = (name: string): string => name.trim().toLowerCase();
