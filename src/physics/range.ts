/** Throws a RangeError that names the quantity unless `value` is a number within the bounds, ends included. */
export function requireWithin(name: string, value: number, least: number, most: number, unit: string): void {
  if (!(value >= least && value <= most)) {
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
