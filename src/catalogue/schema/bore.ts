import { quantity } from '../../quantity/schema.js';

/** Bores that a part may have, m; common practice, no source. */
const NARROWEST = 1e-3;
const WIDEST = 1;
/** Walls rougher than this, m (1 in), are no walls; common practice, no source. */
const ROUGHEST = 0.0254;

/** A size across, for which a bare number most likely meant inches. */
export const across = quantity('length', {
  positive: true,
  atLeast: NARROWEST,
  atMost: WIDEST,
  unit: 'in',
  example: '1-1/2 in',
});
export const wallRoughness = quantity('length', {
  atLeast: 0,
  atMost: ROUGHEST,
  unit: 'in',
  example: '0.0018 in',
});
