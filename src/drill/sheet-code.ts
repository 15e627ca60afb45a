import { createHash } from 'node:crypto';
import type { Problem } from './problem.js';

/** Digits and letters without I, L, O and U, which are misread or misheard (Crockford's base 32, from memory). */
const ALPHABET = '0123456789ABCDEFGHJKMNPQRSTVWXYZ';
const LETTERS = 8;
const BITS = 5n;

/** What marking rests on: two sheets with the same content are the same sheet, whichever version made them. */
const content = ({ number, question, answer, choices }: Problem): unknown => [
  number,
  question,
  answer.kind === 'number'
    ? [answer.value.toPrecision(10), answer.unit, answer.tolerance.toPrecision(10)]
    : [answer.word, answer.options],
  choices.map(({ letter, text, right }) => [letter, text, right]),
];

/**
 * A fingerprint of what a sheet asks and what it takes for right, eight letters as `9F3A-1C2B`: 40 bits of SHA-256. A
 * sheet that another seed, rule set, layout or version made has another one, so answers that carry it are never
 * marked by the wrong key.
 */
export function sheetCode(problems: readonly Problem[]): string {
  const hash = createHash('sha256').update(JSON.stringify(problems.map(content)));
  let bits = BigInt(`0x${hash.digest('hex').slice(0, (LETTERS * Number(BITS)) / 4)}`);
  let letters = '';
  for (let i = 0; i < LETTERS; i++) {
    letters = ALPHABET[Number(bits & 31n)] + letters;
    bits >>= BITS;
  }
  return `${letters.slice(0, LETTERS / 2)}-${letters.slice(LETTERS / 2)}`;
}

const MISREAD: Record<string, string> = { I: '1', L: '1', O: '0', U: 'V' };

/** The same code however it was typed in: small letters, without the dash, O for 0. */
export function sameCode(a: string, b: string): boolean {
  const bare = (code: string) =>
    code
      .toUpperCase()
      .replace(/[^0-9A-Z]/g, '')
      .replace(/[ILOU]/g, (letter) => MISREAD[letter]);
  return bare(a) === bare(b);
}
