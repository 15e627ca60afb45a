import type { PlacedTerrain } from './lines.js';
import type { Reading } from './reading.js';
import type { Spot } from './spot.js';

/** The terrain, once its points make a slope that hose can lie on. */
export function readTerrain(
  spot: Spot | undefined,
  points: readonly (readonly [number, number])[] | undefined,
  reading: Reading,
): PlacedTerrain | undefined {
  if (!spot || !points) return undefined;
  let right = true;
  const wrong = (within: (string | number)[], message: string, hint?: string) => {
    right = false;
    reading.report(spot, message, { within, hint });
  };
  if (points[0][0] !== 0)
    wrong([0, 0], 'the first point of the terrain is at the engine, at distance 0', 'write 0 ft');
  for (let i = 1; i < points.length; i++) {
    const along = points[i][0] - points[i - 1][0];
    if (along <= 0) wrong([i, 0], 'this point is no further on than the one before it');
    else if (Math.abs(points[i][1] - points[i - 1][1]) > along) {
      wrong([i, 1], 'from the point before, the height changes by more than the distance along the ground');
    }
  }
  return right ? { points, spot } : undefined;
}
