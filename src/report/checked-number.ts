/** A fault of this program, never of the reader's file. */
export class InternalFault extends Error {
  constructor(message: string) {
    super(message);
    this.name = 'InternalFault';
  }
}

/** The number itself; a fault that names the field where it is NaN, infinite or no number, so that none is printed. */
export function checkedNumber(field: string, value: unknown): number {
  if (typeof value === 'number' && Number.isFinite(value)) return value;
  throw new InternalFault(`${field} is ${String(value)}, not a finite number`);
}
