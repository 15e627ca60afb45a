// Factories that mathjs exports and its own types leave out.
import 'mathjs';

declare module 'mathjs' {
  export const createUnitClass: unknown;
  export const createUnitFunction: unknown;
  export const createCreateUnit: unknown;
}
