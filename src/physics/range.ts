/** A figure that came through a change of units (212 degF) may miss a bound by its last digit. */
const ROUNDING = 1e-12;

/** Throws a RangeError that names the quantity unless `value` is a number within the bounds, ends included. */
export function requireWithin(name: string, value: number, least: number, most: number, unit: string): void {
  if (!(value >= least - ROUNDING * Math.abs(least) && value <= most + ROUNDING * Math.abs(most))) {
    throw new RangeError(`${name} must be from ${least} to ${most} ${unit}, not ${value}`);
  }
}

/** Throws a RangeError that names the quantity unless `value` is a finite number above zero. */
export function requirePositive(name: string, value: number, unit: string): void {
  if (!(value > 0 && value < Number.POSITIVE_INFINITY)) {
    throw new RangeError(`${name} must be above 0 ${unit}, not ${value}`);
  }
}

/** Throws a RangeError that names the quantity unless `value` is a finite number, zero or above. */
export function requireNotNegative(name: string, value: number, unit: string): void {
  if (!(value >= 0 && value < Number.POSITIVE_INFINITY)) {
    throw new RangeError(`${name} must not be below 0 ${unit}, not ${value}`);
  }
}
