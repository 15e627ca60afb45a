import { STANDARD_GRAVITY } from '../physics/constants.js';
import { quadratic } from './laws.js';
import type { LineContext, PumpToLay } from './line.js';
import type { Part } from './network-builder.js';

/**
 * A pump that stands still and is not valved off: a passage either way, that loses at its last flow what its curve falls by
 * from no flow to there, and by the square of flow. A pump that is driven backward by the water may spin and lose less.
 * Common practice, no source.
 */
export function standingPump(pump: PumpToLay, context: LineContext): Part {
  const curve = context.store.curve(pump.pump, 0);
  const at = { head: 0, slope: 0 };
  curve.evaluate(0, at);
  const shutoff = at.head;
  curve.evaluate(curve.lastFlow, at);
  const fall = Math.max(shutoff - at.head, LEAST_FALL);
  return {
    kind: 'stopped pump',
    name: `${pump.name}, stopped`,
    modelName: pump.modelName,
    law: quadratic(fall / curve.lastFlow ** 2),
    bore: pump.pump.outlet_bore,
    path: pump.path,
  };
}

/** A velocity head or so at the speeds of pump passages, m, so that no curve makes a pump that loses nothing. */
const LEAST_FALL = (10 * 10) / (2 * STANDARD_GRAVITY);
