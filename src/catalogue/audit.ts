import * as z from 'zod';
import { type CatalogueRows, KINDS, SCHEMAS } from './kind.js';
import type { Source } from './schema/text.js';
import { sourceOf } from './source.js';

/** Keys that say what a thing is; they are no values and need no source. */
const WORDS = new Set(
  'name note title agency edition date superseded_by kind jacket schedule shape aspiration fuel grade item requirement net one_way'.split(
    ' ',
  ),
);

/** Keys whose values are bare numbers, having no unit. */
const BARE = new Set(
  'coefficient hazen_williams k friction_multiple flow_coefficient discharge_coefficient crew part_open'.split(
    ' ',
  ),
);

interface Sourced {
  source?: Source;
}

function isMapping(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/**
 * Every fault of the rows as a sentence: a row that its schema refuses, a value without a unit or without a source, a source
 * that is empty or of a key that is not there. None means that the catalogue may ship.
 */
export function auditRows(rows: CatalogueRows): string[] {
  const faults: string[] = [];
  for (const kind of KINDS)
    for (const [id, row] of Object.entries(rows[kind])) {
      const where = `${kind} ${id}`;
      const parsed = SCHEMAS[kind].safeParse(row);
      if (!parsed.success) faults.push(`${where}: ${z.prettifyError(parsed.error)}`);
      auditPart(row, where, faults);
    }
  return faults;
}

/** Looks through a part that names its own sources; a part within it that does so too is looked through apart. */
function auditPart(part: unknown, where: string, faults: string[]): void {
  if (!isMapping(part)) return;
  const seen = new Set<string>();
  for (const [key, value] of Object.entries(part)) {
    if (key === 'source') continue;
    if (key === 'classes' && isMapping(value))
      for (const [id, inner] of Object.entries(value)) auditPart(inner, `${where} ${id}`, faults);
    else auditValue(value, key, key, { part: part as Sourced, where, faults, seen });
  }
  auditSource((part as Sourced).source, seen, where, faults);
}

interface Walk {
  part: Sourced;
  where: string;
  faults: string[];
  seen: Set<string>;
}

function auditValue(value: unknown, key: string, path: string, walk: Walk): void {
  walk.seen.add(path);
  if (Array.isArray(value)) for (const item of value) auditValue(item, key, path, walk);
  else if (isMapping(value) && Object.hasOwn(value, 'source'))
    auditPart(value, `${walk.where} ${path}`, walk.faults);
  else if (isMapping(value))
    for (const [inner, item] of Object.entries(value)) auditValue(item, inner, `${path}.${inner}`, walk);
  else if (!WORDS.has(key)) auditLeaf(value, key, path, walk);
}

function auditLeaf(value: unknown, key: string, path: string, { part, where, faults }: Walk): void {
  const quantity = typeof value === 'string' && /^-?\d[\d,./-]*( \d+\/\d+)? ?[a-zA-Z%]/.test(value);
  if (!quantity && !(typeof value === 'number' && BARE.has(key)))
    faults.push(`${where}: ${path} is ${JSON.stringify(value)}, without a unit`);
  if (!sourceOf(part, path)) faults.push(`${where}: ${path} has no source`);
}

function auditSource(source: Source | undefined, seen: Set<string>, where: string, faults: string[]): void {
  if (typeof source === 'string' && source.trim() === '') faults.push(`${where}: its source is empty`);
  if (!isMapping(source)) return;
  for (const [key, words] of Object.entries(source)) {
    if (!seen.has(key)) faults.push(`${where}: source names ${key}, which is not there`);
    if (typeof words !== 'string' || words.trim() === '') faults.push(`${where}: source of ${key} is empty`);
  }
}
