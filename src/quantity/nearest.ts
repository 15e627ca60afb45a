/** Edit distance in which a swap of neighbours counts as one slip, as a hurried hand makes it. */
export function editDistance(a: string, b: string): number {
  let beforeLast: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const swap = a[i - 1] === b[j - 1] ? 0 : 1;
      row[j] = Math.min(row[j - 1] + 1, last[j] + 1, last[j - 1] + swap);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) {
        row[j] = Math.min(row[j], beforeLast[j - 2] + 1);
      }
    }
    beforeLast = last;
    last = row;
  }
  return last[b.length];
}

const LONGEST_WORD = 60;

/** How many slips a word of a length may have and still be known: one in three letters, none in a single letter. */
function slipsIn(length: number): number {
  return length < 2 ? 0 : Math.max(1, Math.floor(length / 3));
}

/** Without what a hand leaves out or puts elsewhere: `forestry-15` is `forestry-1.5`. */
const bare = (word: string): string => {
  const letters = word.toLowerCase().replace(/[^\p{L}\p{N}]/gu, '');
  return letters === '' ? word : letters;
};

/**
 * The candidate that a misspelt word most likely meant; undefined where none is close enough to name. Letters and figures
 * count first, and the marks between them only among candidates that are alike in those.
 */
export function nearest(word: string, candidates: Iterable<string>): string | undefined {
  if (word.length > LONGEST_WORD) return undefined;
  const wanted = bare(word);
  let best: { candidate: string; slips: number; marks: number } | undefined;
  let most = slipsIn(word.length);
  for (const candidate of candidates) {
    const letters = bare(candidate);
    if (Math.abs(letters.length - wanted.length) > most) continue;
    const slips = editDistance(wanted, letters);
    if (slips > most) continue;
    const marks = editDistance(word.toLowerCase(), candidate.toLowerCase());
    if (best && slips === best.slips && marks >= best.marks) continue;
    best = { candidate, slips, marks };
    most = slips;
  }
  return best?.candidate;
}
