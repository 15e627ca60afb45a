import type { NoSteadyAnswer } from '../study/no-steady-answer.js';
import { paintFor } from './paint.js';
import { plain } from './plain.js';
import type { TextOptions } from './text.js';
import { sentence } from './words.js';
import { wrap, wrapHanging } from './wrap.js';

/** Why nothing flows steadily, which part is the cause, and what to change. */
export function noSteadyAnswerText(
  failure: NoSteadyAnswer,
  { width = 80, colour = false }: TextOptions,
): string {
  const paint = paintFor(colour);
  const { where, message, action, detail } = failure;
  const head = wrap(`NO STEADY ANSWER: ${sentence(plain(message))}`, width);
  const body = [
    where.length > 0 ? `Where: ${where.map(plain).join('; ')}.` : '',
    `Do: ${sentence(plain(action))}`,
    detail ? `The solver: ${sentence(plain(detail))}` : '',
  ];
  return [
    ...head.map((line) => paint.strong(paint.tone('bad', line))),
    ...body.filter(Boolean).flatMap((line) => wrapHanging(line, width, '  ', '  ')),
    '',
  ].join('\n');
}
