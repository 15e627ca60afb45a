/** 140 degF, at which water scalds within seconds, K. Common practice, no source. */
export const SCALDING = ((140 - 32) * 5) / 9 + 273.15;
/** Rise of temperature that the least flow through a pump allows, K: 15 degF. General pump texts, gpm = bhp / 2.95. */
export const RISE_ALLOWED = 15 / 1.8;
