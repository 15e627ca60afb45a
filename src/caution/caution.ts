import type { Measure } from '../quantity/dimension.js';

/**
 * Words that did not come out of this program (a name, a title, what a table says), made fit to stand in a template: a brace in
 * them is doubled, and whoever fills the template prints it as the one brace that it was. Every such word that does not come
 * in as a value comes in through here.
 */
export const literal = (words: string): string => words.replace(/[{}]/g, '$&$&');

/** A sentence: `Inlet of pump {at} stands at {value}` with its measures and, where it rests on one, its source. */
export interface Statement {
  template: string;
  values?: Record<string, Measure | string>;
  source?: string;
}

export type CautionLevel = 'stop' | 'warn' | 'note';

/** A hazard of a layout, with its number, limit, place and remedy. */
export interface Caution {
  code: string;
  level: CautionLevel;
  /** Where: `pump b`, `hose 2 of left`. */
  at: string;
  value?: Measure;
  limit?: Measure;
  /** Templates may use {at}, {value}, {limit} and the names in `values`. */
  message: string;
  action: string;
  values?: Record<string, Measure | string>;
  source: string;
}
