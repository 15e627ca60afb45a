const EIGHTHS = ['', '1/8', '1/4', '3/8', '1/2', '5/8', '3/4', '7/8'];
const EIGHTH_INCH = 0.0254 / 8;

/**
 * A size as the trade calls it, from metres: `1-1/2 in` where it is a whole number of eighths of an inch, else millimetres.
 * Names of sizes are not converted: a 1-1/2 in hose is called that in any unit system.
 */
export function nominalSize(metres: number): string {
  const eighths = Math.round(metres / EIGHTH_INCH);
  if (Math.abs(metres - eighths * EIGHTH_INCH) > 1e-6) return `${Number((metres * 1e3).toFixed(1))} mm`;
  const whole = Math.floor(eighths / 8);
  const part = EIGHTHS[eighths % 8];
  return `${[whole > 0 || part === '' ? whole : '', part].filter((text) => text !== '').join('-')} in`;
}
