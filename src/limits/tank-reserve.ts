/** Part of the tank that is kept back. */
export const TANK_RESERVE = 0.1;
export const TANK_RESERVE_SOURCE =
  'Interagency Standards for Fire and Fire Aviation Operations, chapter 14: at least 10 % of the pumpable tank is kept';
