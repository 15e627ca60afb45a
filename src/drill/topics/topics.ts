import type { Topic } from '../draft.js';
import { appliancesInLine } from './appliances-in-line.js';
import { frictionLoss } from './friction-loss.js';
import { progressiveLay } from './progressive-lay.js';
import { siamese } from './siamese.js';
import { singleLine } from './single-line.js';
import { lineDownhill, lineUphill } from './sloping-line.js';
import { smoothBoreFlow } from './smooth-bore-flow.js';
import { twoSizes } from './two-sizes.js';
import { volume } from './volume.js';
import { waterMinutes } from './water-minutes.js';
import { wyeEqual, wyeUnequal } from './wye.js';

const all = [
  volume,
  waterMinutes,
  frictionLoss,
  singleLine,
  lineUphill,
  lineDownhill,
  smoothBoreFlow,
  appliancesInLine,
  twoSizes,
  wyeEqual,
  wyeUnequal,
  siamese,
  progressiveLay,
] as const;

/** Every topic, easy to hard. */
export const TOPICS: readonly Topic[] = all as unknown as readonly Topic[];
