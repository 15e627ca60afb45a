import type { Topic } from '../draft.js';
import { appliancesInLine } from './appliances-in-line.js';
import { altitudeDraft, drafting, netPressure } from './drafting.js';
import { frictionLoss } from './friction-loss.js';
import { gaugeFaults } from './gauge-faults.js';
import { onePumpOut } from './one-pump-out.js';
import { operatingPoint } from './operating-point.js';
import { parallelPumps } from './parallel-pumps.js';
import { progressiveLay } from './progressive-lay.js';
import { relay } from './relay.js';
import { seriesPumps } from './series-pumps.js';
import { siamese } from './siamese.js';
import { singleLine } from './single-line.js';
import { lineDownhill, lineUphill } from './sloping-line.js';
import { smoothBoreFlow } from './smooth-bore-flow.js';
import { stagingChoice } from './staging-choice.js';
import { tenderShuttle } from './tender-shuttle.js';
import { twoSizes } from './two-sizes.js';
import { typingOrifice } from './typing-orifice.js';
import { volume } from './volume.js';
import { waterMinutes } from './water-minutes.js';
import { weakPump } from './weak-pump.js';
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
  drafting,
  netPressure,
  altitudeDraft,
  relay,
  stagingChoice,
  tenderShuttle,
  gaugeFaults,
  typingOrifice,
  operatingPoint,
  parallelPumps,
  seriesPumps,
  weakPump,
  onePumpOut,
] as const;

/** Every topic, easy to hard. */
export const TOPICS: readonly Topic[] = all as unknown as readonly Topic[];
