import type { Kind } from '../catalogue/kind.js';
import type { Measure } from '../quantity/dimension.js';

/** A value of a row: a quantity in SI, a bare number, a word, or several of them. */
export type FigureValue =
  | Measure
  | number
  | string
  | boolean
  | FigureValue[]
  | { [key: string]: FigureValue };

export interface CatalogueFigure {
  /** `limits.burst` for a key within a key. */
  key: string;
  /** As the data file has it, in the units that its source prints. */
  written: string;
  value: FigureValue;
  source?: string;
}

export interface CatalogueEntry {
  kind: Kind;
  /** What a layout writes. */
  id: string;
  /** The table that a typing class is in, which a layout writes as `scheme`. */
  scheme?: string;
  name?: string;
  note?: string;
  figures: CatalogueFigure[];
}

export interface CatalogueKind {
  kind: Kind;
  /** What it is, and where a layout takes it. */
  about: string;
  count: number;
}

/** What the catalogue holds, or those of its rows that a word finds. */
export interface CatalogueAnswer {
  question: 'catalogue';
  kind?: Kind;
  word?: string;
  kinds: CatalogueKind[];
  /** None where nothing was asked but which kinds there are. */
  entries: CatalogueEntry[];
}
