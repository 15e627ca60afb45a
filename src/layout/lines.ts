import { formatFigure, grouped } from '../quantity/format.js';
import { parseQuantity } from '../quantity/parse.js';
import { type Draft, expandedCount, isWhole } from './draft.js';
import { expand } from './expand.js';
import { readSteps } from './read-steps.js';
import type { Reading } from './reading.js';
import { MOST_STEPS } from './schema/steps.js';
import type { Spot } from './spot.js';
import type { Step } from './step.js';
import { checkLine, type LineRole } from './step-rules.js';
import { Ground, Terrain } from './terrain.js';

/** Terrain with where it stands. */
export interface PlacedTerrain {
  points: readonly (readonly [number, number])[];
  spot: Spot;
}

/** Reads a line whole: its steps, their order, and the line written out, which is empty where it has problems. */
export function readLine(
  spot: Spot | undefined,
  group: string,
  role: LineRole,
  reading: Reading,
  terrain?: PlacedTerrain,
): Step[] {
  if (!spot) return [];
  const drafts = readSteps(spot, reading);
  reading.steps += expandedCount(drafts);
  if (reading.steps > MOST_STEPS) return tooMany(drafts, spot, reading);
  checkLine(drafts, role, reading);
  if (drafts.length < spot.items().length || !isWhole(drafts)) return [];
  if (!terrain) return expand(drafts, group, reading);
  const ground = new Terrain(terrain.points);
  const steps = expand(drafts, group, reading, new Ground(ground));
  if (ground.tooShort) reportShort(ground, terrain.spot, group, reading);
  return steps;
}

function tooMany(drafts: readonly Draft[], spot: Spot, reading: Reading): Step[] {
  const repeat = drafts.find(({ key, lines, count }) => {
    return (
      key === 'repeat' &&
      count * lines.reduce((sum, line) => sum + expandedCount(line.steps), 0) > MOST_STEPS / 10
    );
  });
  const most = grouped(MOST_STEPS);
  reading.report(
    repeat?.spot ?? spot,
    `the layout has more than ${most} steps once its repeats are written out`,
    {
      within: repeat ? ['repeat'] : [],
    },
  );
  return [];
}

/** In the unit that the terrain is written in. */
function reportShort(ground: Terrain, spot: Spot, group: string, reading: Reading): void {
  const last = spot.items().at(-1)?.child(0);
  const read = parseQuantity(last?.value, 'length');
  const unit = 'unit' in read ? read.unit : 'm';
  const shown = (distance: number) => `${formatFigure(distance, unit)} ${unit}`;
  reading.report(
    last ?? spot,
    `the terrain ends at ${shown(ground.length)}, and the hose of ${group} runs to ${shown(ground.reached)}`,
    { hint: 'add a point further on, or give the hose beyond it a rise of its own' },
  );
}
