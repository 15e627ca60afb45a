import type { LayoutProblems, Problem } from '../layout/problem.js';
import { columnsOf } from './columns.js';
import { type Paint, paintFor } from './paint.js';
import { plain } from './plain.js';
import type { TextOptions } from './text.js';
import { counted, sentence } from './words.js';
import { wrap, wrapHanging } from './wrap.js';

const INDENT = '  ';
/** What stays visible before the offending text where a line has to be cut. */
const LEAD = 8;

interface Window {
  text: string;
  markerOffset: number;
  markerLength: number;
}

/** The part of a line that fits in `room` columns and has the offending text in it. */
function windowOf(excerpt: string, markerOffset: number, markerLength: number, room: number): Window {
  const letters = [...excerpt];
  const from = markerOffset + markerLength <= room ? 0 : Math.max(0, markerOffset - LEAD);
  const text = letters.slice(from, from + room).join('');
  const offset = markerOffset - from;
  return { text, markerOffset: offset, markerLength: Math.max(1, Math.min(markerLength, room - offset)) };
}

function excerptLines(problem: Problem, width: number, paint: Paint): string[] {
  const { line, excerpt, markerOffset = 0, markerLength = 1 } = problem;
  if (excerpt === undefined) return [];
  const gutter = `${INDENT}${line} | `;
  const blank = `${' '.repeat(gutter.length - 2)}| `;
  const room = Math.max(LEAD * 2, width - gutter.length);
  const shown = windowOf(plain(excerpt), markerOffset, markerLength, room);
  const marker = ' '.repeat(shown.markerOffset) + '^'.repeat(shown.markerLength);
  return [paint.tone('quiet', gutter) + shown.text, paint.tone('quiet', blank) + paint.tone('bad', marker)];
}

/** Problems that differ in their place alone, told once with every place. */
function alike(problems: readonly Problem[]): Problem[][] {
  const groups = new Map<string, Problem[]>();
  for (const problem of problems) {
    const { message, expected, hint } = problem;
    const key = JSON.stringify([message, expected, hint]);
    groups.set(key, [...(groups.get(key) ?? []), problem]);
  }
  return [...groups.values()];
}

const placeOf = ({ file, line, column }: Problem): string =>
  line === undefined ? plain(file) : `${plain(file)}:${line}:${column}`;

/** Where else it stands: lines alone within the same file. */
function othersText([first, ...others]: Problem[]): string | undefined {
  if (others.length === 0) return undefined;
  const places = others.map((one) =>
    one.file === first.file && one.line !== undefined ? `${one.line}:${one.column}` : placeOf(one),
  );
  return `The same at ${counted(others.length, 'other place')}: ${places.join(', ')}`;
}

function problemLines(problems: Problem[], width: number, paint: Paint): string[] {
  const [problem] = problems;
  const { message, expected, hint } = problem;
  const place = placeOf(problem);
  const said = (text: string | undefined) =>
    text ? wrapHanging(sentence(plain(text)), width, INDENT, INDENT) : [];
  return [
    ...(columnsOf(place) <= width ? [place] : wrap(place, width)).map((text) => paint.strong(text)),
    ...said(message),
    ...excerptLines(problem, width, paint),
    ...said(expected && `Expected: ${expected}`),
    ...said(hint),
    ...said(othersText(problems)),
  ];
}

/** Everything that is wrong with a layout: where, what, the line with a marker, and what to write instead. */
export function problemsText({ problems, more, within }: LayoutProblems, options: TextOptions): string {
  const { width = 80, colour = false } = options;
  const paint = paintFor(colour);
  const found = counted(problems.length, 'problem');
  const head = wrap(`${more ? 'More than ' : ''}${found} in ${within}; nothing was computed.`, width);
  return [
    ...head.map((line) => paint.strong(paint.tone('bad', line))),
    ...alike(problems).flatMap((same) => ['', ...problemLines(same, width, paint)]),
    '',
  ].join('\n');
}
