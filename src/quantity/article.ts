/** Read out, these start with a vowel: 8, 80 and 800 of anything, 11 and 18 of it, and of thousands as well. */
const VOWEL = /^(?:[aeiou]|8|1[18](?![\d.]))/i;
/** Spelt with a vowel and spoken with a consonant. */
const CONSONANT = /^(?:one|once|uni|use|usual|us )/i;

/** The words with `a` or `an` before them, as they are spoken: `an appliance`, `an 11/16 in tip`, `a unit`. */
export const withArticle = (words: string): string =>
  `${VOWEL.test(words) && !CONSONANT.test(words) ? 'an' : 'a'} ${words}`;

/** The same at the head of a sentence. */
export const withCapitalArticle = (words: string): string => withArticle(words).replace(/^a/, 'A');
