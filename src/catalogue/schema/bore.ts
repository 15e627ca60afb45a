import { quantity } from '../../quantity/schema.js';

/** A size across, for which a bare number most likely meant inches. */
export const across = quantity('length', { positive: true, unit: 'in', example: '1-1/2 in' });
export const wallRoughness = quantity('length', { atLeast: 0, unit: 'in', example: '0.0018 in' });
