import type { TopicMark } from './marking.js';

/** Below this part of right answers a topic is taught again: 70 % is a common passing mark of operator courses. */
const PASSING = 0.7;

/** What to teach again, worst first: each topic below the passing mark, with the slip made most in it. */
export function teachAgain(topics: readonly TopicMark[]): string[] {
  return topics
    .map((topic) => ({ ...topic, of: topic.right + topic.wrong + topic.blank }))
    .filter(({ right, of }) => of > 0 && right / of < PASSING)
    .sort((a, b) => a.right / a.of - b.right / b.of || b.of - a.of)
    .map(({ topicTitle, right, of, blank, slips }) => {
      const [worst] = slips;
      const left = blank > 0 ? `, ${blank} left blank` : '';
      const slip =
        worst === undefined ? '' : ` ${worst.why}${worst.count > 1 ? ` (${worst.count} times)` : ''}`;
      return `${topicTitle}: ${right} of ${of} right${left}.${slip}`;
    });
}
