import type { PlacedTerrain } from './lines.js';
import { riseOfGrade } from './make-step.js';
import type { Reading } from './reading.js';
import { type LayoutDocument, terrainSchema } from './schema/layout.js';
import type { Spot } from './spot.js';

/** Ground of one grade has no end: longer than any lay, m. */
const ENDLESS = 1e6;

type Points = readonly (readonly [distance: number, height: number])[];

/** The terrain, once its points make a slope that hose can lie on. */
export function readTerrain(
  spot: Spot | undefined,
  given: LayoutDocument['terrain'],
  reading: Reading,
): PlacedTerrain | undefined {
  if (!spot) return undefined;
  const terrain = given ?? terrainSchema.safeParse(spot.value).data;
  if (!terrain) return undefined;
  if ('grade' in terrain) {
    return {
      points: [
        [0, 0],
        [ENDLESS, riseOfGrade(ENDLESS, terrain.grade)],
      ],
      spot,
    };
  }
  if ('on_map' in terrain) {
    const at = spot.child('on_map') ?? spot;
    return right(terrain.on_map, at, true, reading)
      ? { points: alongSlope(terrain.on_map), spot: at }
      : undefined;
  }
  const at = spot.child('along_slope') ?? spot;
  const { along_slope: points } = terrain;
  return right(points, at, false, reading) ? { points, spot: at } : undefined;
}

function right(points: Points, spot: Spot, onMap: boolean, reading: Reading): boolean {
  let sound = true;
  const wrong = (within: (string | number)[], message: string, hint?: string) => {
    sound = false;
    reading.report(spot, message, { within, hint });
  };
  if (points[0][0] !== 0)
    wrong([0, 0], 'the first point of the terrain is at the engine, at distance 0', 'write 0 ft');
  for (let i = 1; i < points.length; i++) {
    const along = points[i][0] - points[i - 1][0];
    if (along <= 0) wrong([i, 0], 'this point is no further on than the one before it');
    else if (!onMap && Math.abs(points[i][1] - points[i - 1][1]) > along) {
      wrong(
        [i, 1],
        'from the point before, the height changes by more than the distance along the ground',
        'distances off a map go under on_map',
      );
    }
  }
  return sound;
}

/** Distances off a map as distances along the ground: the hypotenuse of each leg. */
function alongSlope(points: Points): Points {
  let distance = 0;
  return points.map(([at, height], i) => {
    if (i > 0) distance += Math.hypot(at - points[i - 1][0], height - points[i - 1][1]);
    return [distance, height] as const;
  });
}
