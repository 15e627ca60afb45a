import { unknownHose } from '../limits/unknown-hose.js';
import type { Hazard } from './hazard.js';

/** Hose of which nothing says what it bears: no pressure is safe in it by any figure here, and none is called too high. */
export const hoseLimitUnknown: Hazard = ({ layout, cases }) =>
  unknownHose(
    layout,
    cases.map(({ point }) => point),
  ).map((at) => ({
    code: 'hose_limit_not_known',
    level: 'note',
    at,
    message: 'Limit not known: nothing says what {at} bears, so that no pressure here is held against it',
    action:
      'Read the service test pressure off the hose, state it in the layout (limits), and stay 10 % below it.',
    source: 'the row of the hose, or the layout, gives no working and no service test pressure',
  }));
