import { columnsOf } from './columns.js';

function pieces(word: string, width: number): string[] {
  if (columnsOf(word) <= width) return [word];
  const parts = [''];
  for (const letter of word) {
    const longer = parts[parts.length - 1] + letter;
    if (columnsOf(longer) <= width || parts[parts.length - 1] === '') parts[parts.length - 1] = longer;
    else parts.push(letter);
  }
  return parts;
}

const UNIT =
  /(\d) (?=(?:psi|kPa|gpm|L\/min|gal|L|ft\/s|m\/s|ft|in|mm|m|lbf?|kg|N|hp|kW|rpm|min|h|degF|degC|%)(?![\w/]))/g;

/** A figure stays with its unit: `271` at the end of a line and `psi` on the next is a figure misread. */
export const glued = (text: string): string => text.replace(UNIT, '$1\u00a0');

const words = (text: string): string[] => glued(text).split(/ +/).filter(Boolean);

/** Lines no longer than `width`; a word that is longer still is cut. */
export function wrap(text: string, width: number): string[] {
  const room = Math.max(1, width);
  const lines: string[] = [];
  let line = '';
  for (const word of words(text).flatMap((w) => pieces(w, room))) {
    const longer = line ? `${line} ${word}` : word;
    if (columnsOf(longer) <= room) {
      line = longer;
    } else {
      lines.push(line);
      line = word;
    }
  }
  if (line || lines.length === 0) lines.push(line);
  return lines.map((each) => each.replaceAll('\u00a0', ' '));
}

/** Wrapped with the first line after `first` and the others after `rest`. */
export function wrapHanging(text: string, width: number, first: string, rest: string): string[] {
  return wrap(text, width - Math.max(columnsOf(first), columnsOf(rest))).map(
    (line, index) => (index === 0 ? first : rest) + line,
  );
}
