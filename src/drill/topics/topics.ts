import type { Topic } from '../draft.js';
import { appliancesInLine } from './appliances-in-line.js';
import { frictionLoss } from './friction-loss.js';
import { singleLine } from './single-line.js';
import { lineDownhill, lineUphill } from './sloping-line.js';
import { smoothBoreFlow } from './smooth-bore-flow.js';

const all = [frictionLoss, singleLine, lineUphill, lineDownhill, smoothBoreFlow, appliancesInLine] as const;

/** Every topic, easy to hard. */
export const TOPICS: readonly Topic[] = all as unknown as readonly Topic[];
