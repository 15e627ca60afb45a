import * as z from 'zod';
import { sameId } from './ids.js';
import { type CatalogueRows, type Kind, type Model, SCHEMAS } from './kind.js';
import { catalogueModels, catalogueRows } from './rows.js';

/** Everything that ships in the data files, each row read by its schema when it is first asked for. */
export interface Catalogue {
  /** The row as a model in SI units; undefined where there is none of that id. */
  find<K extends Kind>(kind: K, id: string): Model<K> | undefined;
  has(kind: Kind, id: string): boolean;
  /** The id as the data files have it, from one whose sizes may be spelt another way (`2-1/2` for `2.5`). */
  idOf(kind: Kind, word: string): string | undefined;
  /** In the order of the data files. */
  ids(kind: Kind): string[];
  /** The row as the data file has it, units and sources and all. */
  row(kind: Kind, id: string): unknown;
}

/** Reads the catalogue that ships, or the rows given. */
export function loadCatalogue(rows?: CatalogueRows): Catalogue {
  const built = rows === undefined ? catalogueModels() : undefined;
  return built ? builtCatalogue(built) : readCatalogue(rows ?? catalogueRows());
}

function readCatalogue(rows: CatalogueRows): Catalogue {
  const models = new Map<string, unknown>();
  const has = (kind: Kind, id: string) => Object.hasOwn(rows[kind], id);
  return {
    has,
    idOf: (kind, word) => (has(kind, word) ? word : sameId(word, Object.keys(rows[kind]))),
    ids: (kind) => Object.keys(rows[kind]),
    row: (kind, id) => (has(kind, id) ? rows[kind][id] : undefined),
    find<K extends Kind>(kind: K, id: string) {
      if (!has(kind, id)) return undefined;
      const key = `${kind} ${id}`;
      if (!models.has(key)) models.set(key, parseRow(kind, id, rows[kind][id]));
      return models.get(key) as Model<K>;
    },
  };
}

/**
 * The catalogue whose rows were read and checked when the program was built, each a text of its own: of some hundreds a run
 * names a dozen.
 */
function builtCatalogue(texts: CatalogueRows): Catalogue {
  let rows: CatalogueRows | undefined;
  const models = new Map<string, unknown>();
  const has = (kind: Kind, id: string) => Object.hasOwn(texts[kind], id);
  return {
    has,
    idOf: (kind, word) => (has(kind, word) ? word : sameId(word, Object.keys(texts[kind]))),
    ids: (kind) => Object.keys(texts[kind]),
    row: (kind, id) => {
      rows ??= catalogueRows();
      return has(kind, id) ? rows[kind][id] : undefined;
    },
    find<K extends Kind>(kind: K, id: string) {
      if (!has(kind, id)) return undefined;
      const key = `${kind} ${id}`;
      if (!models.has(key)) models.set(key, JSON.parse(texts[kind][id] as string));
      return models.get(key) as Model<K>;
    },
  };
}

function parseRow(kind: Kind, id: string, row: unknown): unknown {
  const parsed = SCHEMAS[kind].safeParse(row);
  if (!parsed.success)
    throw new Error(`the catalogue's ${kind} ${id} is wrong: ${z.prettifyError(parsed.error)}`);
  return parsed.data;
}
