import type { Draw } from './random.js';

/** Places and engines of our own invention. */
const PLACES = [
  'Sorrel Spur',
  'Quillback Yard',
  'Tansy Draw',
  'Pewter Creek',
  'Larkhollow',
  'Cinder Bench',
  'Moth Ridge',
  'Two Kettle Flat',
  'Saddler’s Gap',
  'Bittern Slough',
  'Hobnail Road',
  'Amberwell',
];

export const place = (draw: Draw): string => draw.pick(PLACES);
export const engine = (draw: Draw): string => `Engine ${draw.whole(11, 98) * 10 + draw.whole(1, 9)}`;
