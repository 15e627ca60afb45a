import { sameId } from '../catalogue/ids.js';
import { KINDS, type Kind } from '../catalogue/kind.js';
import type { Catalogue } from '../catalogue/load.js';
import type { Source } from '../catalogue/schema/text.js';
import { sourceOf } from '../catalogue/source.js';
import { readNumber } from '../quantity/number.js';
import { findUnit, fromUnit, UNITS } from '../quantity/units.js';
import type { CatalogueAnswer, CatalogueEntry, CatalogueFigure, FigureValue } from './catalogue-answer.js';

const ABOUT: Record<Kind, string> = {
  hose: 'for steps of a lay, suction and hose_carried',
  pipe: 'rigid, for steps of plumbing',
  fitting: 'in a run of pipe, for fittings: of a pipe step',
  valve: 'for valve: steps',
  check_valve: 'for check_valve: steps',
  appliance: 'allowances and strainers, for appliance: steps and supply',
  branch: 'wyes, tees and manifolds, for branch: steps',
  nozzle: 'tips, nozzles and test orifices, for nozzle: steps',
  pump: 'all of them invented, for model: of an engine and pump: steps',
  typing: 'tables with their classes, for typing: {scheme:, class:}',
};

/** Keys that say what a row is; they stand apart from its figures. */
const SAID_APART = new Set(['name', 'note', 'source', 'title', 'classes']);

type Row = Record<string, unknown> & { source?: Source };

const isMapping = (value: unknown): value is Row =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

function writtenOf(value: unknown): string {
  if (Array.isArray(value))
    return value.map((one) => (Array.isArray(one) ? one.join(' ') : writtenOf(one))).join(', ');
  if (isMapping(value))
    return Object.entries(value)
      .filter(([key]) => key !== 'source')
      .map(([key, one]) => `${key.replaceAll('_', ' ')} ${writtenOf(one)}`)
      .join(' ');
  return String(value);
}

function figureValueOf(value: unknown): FigureValue {
  if (Array.isArray(value)) return value.map(figureValueOf);
  if (isMapping(value))
    return Object.fromEntries(
      Object.entries(value)
        .filter(([key]) => key !== 'source')
        .map(([key, one]) => [key, figureValueOf(one)]),
    );
  if (typeof value !== 'string') return value as number | boolean;
  const number = readNumber(value);
  const unit = 'value' in number ? findUnit(number.rest) : undefined;
  if (!('value' in number) || unit === undefined) return value;
  return { value: fromUnit(number.value, unit), dimension: UNITS[unit].dimension };
}

function* figuresOf(row: Row, part: unknown = row, path = ''): Generator<CatalogueFigure> {
  for (const [name, value] of Object.entries(part as Row)) {
    if (SAID_APART.has(name)) continue;
    const key = path === '' ? name : `${path}.${name}`;
    if (isMapping(value) && !('source' in value)) yield* figuresOf(row, value, key);
    else {
      const own = isMapping(value) ? value.source : undefined;
      const source = own === undefined ? sourceOf(row, key) : writtenOf(own);
      yield { key, written: writtenOf(value), value: figureValueOf(value), source };
    }
  }
}

function entryOf(kind: Kind, id: string, row: Row, scheme?: string): CatalogueEntry {
  const name = row.name ?? row.title;
  return {
    kind,
    id,
    scheme,
    name: name === undefined ? undefined : String(name),
    note: row.note === undefined ? undefined : String(row.note).trim(),
    figures: [...figuresOf(row)],
  };
}

/** The rows of a kind; of a typing table each class is one of its own. */
function entriesOf(catalogue: Catalogue, kind: Kind): CatalogueEntry[] {
  return catalogue.ids(kind).flatMap((id) => {
    const row = catalogue.row(kind, id) as Row;
    const classes = Object.entries((row.classes ?? {}) as Record<string, Row>);
    return [
      entryOf(kind, id, row),
      ...classes.map(([name, one]) => entryOf(kind, name, { source: row.source, ...one }, id)),
    ];
  });
}

const plainly = (text: string): string => text.toLowerCase().replaceAll('_', ' ').replaceAll('-', ' ');

function found(entry: CatalogueEntry, word: string): boolean {
  if (sameId(word, [entry.id]) !== undefined) return true;
  const { id, scheme, name, note } = entry;
  const own = entry.figures.filter(({ key }) => ['kind', 'jacket', 'agency'].includes(key));
  const text = plainly([id, scheme, name, note, ...own.map(({ written }) => written)].join(' '));
  return plainly(word)
    .split(' ')
    .filter(Boolean)
    .every((part) => text.includes(part));
}

export interface CatalogueAsked {
  kind?: Kind;
  /** Words that all have to stand in the id, the name, the note or the kind of a row. */
  word?: string;
}

/** What the catalogue holds of a kind or of all, told by a word; the kinds alone where nothing is asked for. */
export function searchCatalogue(catalogue: Catalogue, { kind, word }: CatalogueAsked = {}): CatalogueAnswer {
  const kinds = KINDS.map((each) => ({
    kind: each,
    about: ABOUT[each],
    count: catalogue.ids(each).length,
  }));
  const asked = kind !== undefined ? [kind] : word !== undefined ? KINDS : [];
  const all = asked.flatMap((each) => entriesOf(catalogue, each));
  const entries = word === undefined ? all : all.filter((entry) => found(entry, word));
  return { question: 'catalogue', kind, word, kinds, entries };
}
