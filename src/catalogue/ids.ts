import { nearest } from '../quantity/nearest.js';

/** A size in an id: `2-1/2`, `1/2`, `2.5`, `2`. A letter before it belongs to the name, as in `10s`. */
const SIZE = /(\d+)-(\d+)\/(\d+)|(\d+)\/(\d+)|\d+(?:\.\d+)?/g;

function decimal(...[text, whole, part, of, numerator, denominator]: string[]): string {
  if (whole !== undefined) return String(Number(whole) + Number(part) / Number(of));
  if (numerator !== undefined) return String(Number(numerator) / Number(denominator));
  return String(Number(text));
}

/** An id with its sizes as decimals, so that `stainless-10s-2-1/2` and `stainless-10s-2.5` are one. */
const spelt = (id: string): string =>
  id.replace(SIZE, (text, ...parts) => decimal(text, ...(parts.slice(0, 5) as string[])));

const sizesOf = (id: string): string => (spelt(id).match(/\d+(?:\.\d+)?/g) ?? []).join(' ');

const digitsOf = (id: string): string => id.replace(/\D/g, '');

/** The id that a word spells, sizes in fractions or decimals; undefined where there is none. */
export function sameId(word: string, ids: readonly string[]): string | undefined {
  if (!/\d/.test(word)) return undefined;
  const wanted = spelt(word);
  return ids.find((id) => spelt(id) === wanted);
}

/**
 * The id that a misspelt word most likely meant, of the same size or none at all: another size is another thing. A point
 * that was left out (`forestry-15`) is a slip, a size that is not there is none.
 */
export function closeId(word: string, ids: readonly string[]): string | undefined {
  const sizes = sizesOf(word);
  const slips = !word.includes('/');
  const alike = (id: string) => sizesOf(id) === sizes || (slips && digitsOf(id) === digitsOf(word));
  const spellings = new Map(ids.filter(alike).map((id) => [spelt(id), id]));
  const close = nearest(spelt(word), spellings.keys());
  return close === undefined ? undefined : spellings.get(close);
}
