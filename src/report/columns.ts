/** Letters that a terminal draws two columns wide: East Asian scripts and pictures. */
const WIDE =
  /[\u1100-\u115f\u2e80-\ua4cf\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe6f\uff00-\uff60\uffe0-\uffe6\u{1f300}-\u{1faff}\u{20000}-\u{3fffd}]/u;
const NO_WIDTH = /[\p{M}\p{Cf}]/u;
const PLAIN = /^[\u0020-\u02ff]*$/;

function columnsOfLetter(letter: string): number {
  if (NO_WIDTH.test(letter)) return 0;
  return WIDE.test(letter) ? 2 : 1;
}

/** Columns that a line of text takes on a terminal; the text has no control characters and no colour. */
export function columnsOf(text: string): number {
  if (PLAIN.test(text)) return text.length;
  let columns = 0;
  for (const letter of text) columns += columnsOfLetter(letter);
  return columns;
}
