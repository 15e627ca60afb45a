import type { Problem } from '../../drill/problem.js';
import type { PrintedSheet } from './printed-sheet.js';

/** What GIFT reads as its own signs. */
const escaped = (text: string): string => text.replace(/[\\~=#{}:]/g, '\\$&').replace(/\s*\n\s*/g, ' ');

const DIGITS = 10;
const bare = (value: number): string => String(Number(value.toPrecision(DIGITS)));

function answers({ answer, choices, slips }: Problem): string[] {
  if (choices.length > 0)
    return choices.map(
      ({ text, right, why }) => `${right ? '=' : '~'}${escaped(text)}${why ? `#${escaped(why)}` : ''}`,
    );
  if (answer.kind === 'number') return [`#${bare(answer.value)}:${bare(answer.tolerance)}`];
  return [`=${escaped(answer.word)}`, ...slips.map(({ text, why }) => `~${escaped(text)}#${escaped(why)}`)];
}

function question(problem: Problem, code: string): string {
  const { number, topicTitle, answer, choices } = problem;
  const unit = answer.kind === 'number' && choices.length === 0 && answer.unit ? ` (in ${answer.unit})` : '';
  return [
    `// ${problem.id}`,
    `::${escaped(`${code} ${number}. ${topicTitle}`)}::${escaped(problem.question + unit)} {`,
    ...answers(problem),
    '}',
  ].join('\n');
}

/** A sheet with its answers as a quiz in GIFT, an open text format of learning systems. */
export const sheetGift = ({ sheet, code }: PrintedSheet): string =>
  `$CATEGORY: pumpyoke/${code}\n\n${sheet.problems.map((problem) => question(problem, code)).join('\n\n')}\n`;
