import type { MarkedAnswer, StudentMark, TopicMark } from '../../drill/marking/marking.js';
import {
  type Block,
  type Cell,
  type Column,
  type Document,
  heading,
  type ListItem,
  paragraph,
  type Tone,
} from '../document.js';
import { asSentence, counted } from '../words.js';
import { answerText } from './key-document.js';
import { type PrintedMarking, percentOf } from './marking-json.js';

const whole = (percent: number): string => `${Math.floor(percent)} %`;

function passWords(mark: StudentMark, pass: number | undefined): { text: string; tone?: Tone } {
  if (pass === undefined) return { text: '' };
  return percentOf(mark) >= pass ? { text: 'passed', tone: 'good' } : { text: 'NOT PASSED', tone: 'bad' };
}

const VERDICT_WORDS: Record<MarkedAnswer['verdict'], string> = {
  right: 'right',
  wrong: 'wrong',
  blank: 'no answer',
  unreadable: 'not readable',
};

function answerItem({ problem, text, verdict, slip, note }: MarkedAnswer): ListItem {
  const said = verdict === 'blank' ? '' : ` ${text.trim()};`;
  const lines = [`${VERDICT_WORDS[verdict]}:${said} the key says ${answerText(problem)}`];
  if (slip) lines.push(slip.why);
  else if (verdict === 'wrong') lines.push('No known slip gives this: look at the working.');
  if (note) lines.push(asSentence(note));
  return { lead: `${problem.number}. ${problem.topicTitle}`, lines };
}

const teachList = (sentences: readonly string[]): Block => ({
  kind: 'list',
  items: sentences.map((text) => ({ lines: [text] })),
});

function studentBlocks(mark: StudentMark, pass: number | undefined): Block[] {
  const { student, right, of, answers, teachAgain } = mark;
  const open = answers.filter((answer) => answer.verdict !== 'right');
  const verdict = passWords(mark, pass);
  const score = `${student}: ${right} of ${of} right (${whole(percentOf(mark))})`;
  const title = verdict.text ? `${score}, ${verdict.text}` : score;
  const noted = answers.filter(({ verdict, note }) => verdict === 'right' && note);
  return [
    { ...heading(title), tone: verdict.tone },
    ...(open.length > 0 ? [{ kind: 'list' as const, items: open.map(answerItem) }] : []),
    ...noted.map(({ problem, note }) => paragraph(`${problem.number}. right, but ${note}.`)),
    ...(teachAgain.length > 0
      ? [paragraph('Teach again:'), teachList(teachAgain)]
      : [paragraph('Nothing to teach again.')]),
  ];
}

const topicRow = ({ topicTitle, right, wrong, blank }: TopicMark): string[] => [
  topicTitle,
  String(right),
  String(wrong),
  String(blank),
];

function topicsBlocks(topics: readonly TopicMark[]): Block[] {
  const slips = topics.flatMap(({ topicTitle, slips }) =>
    slips.map(({ why, count }) => ({ lead: `${topicTitle}, ${counted(count, 'time')}`, lines: [why] })),
  );
  return [
    heading('By topic'),
    {
      kind: 'table',
      columns: [
        { title: 'Topic' },
        { title: 'Right', align: 'right' },
        { title: 'Wrong', align: 'right' },
        { title: 'Blank', align: 'right' },
      ],
      rows: topics.map(topicRow),
    },
    ...(slips.length > 0 ? [heading('Slips that were made'), { kind: 'list' as const, items: slips }] : []),
  ];
}

function headline({ marking, pass }: PrintedMarking): Block {
  const { students } = marking;
  const right = students.reduce((sum, student) => sum + student.right, 0);
  const of = students.reduce((sum, student) => sum + student.of, 0);
  const score = `${counted(students.length, 'student')}: ${right} of ${of} answers right`;
  if (pass === undefined) return { kind: 'heading', level: 1, text: score };
  const passed = students.filter((student) => percentOf(student) >= pass).length;
  const all = passed === students.length;
  const text = `${score}; ${passed} of ${students.length} passed at ${pass} %`;
  return { kind: 'heading', level: 1, text, tone: all ? 'good' : 'bad' };
}

function studentsTable({ marking, pass }: PrintedMarking): Block {
  const rows = marking.students.map((mark): Cell[] => {
    const { text, tone } = passWords(mark, pass);
    const score = [mark.student, `${mark.right} of ${mark.of}`, whole(percentOf(mark))];
    return pass === undefined ? score : [...score, tone ? { text, tone } : text];
  });
  const columns: Column[] = [
    { title: 'Student' },
    { title: 'Right', align: 'right' },
    { title: 'Share', align: 'right' },
    ...(pass === undefined ? [] : [{ title: 'Verdict' }]),
  ];
  return { kind: 'table', columns, rows };
}

/** A marked class: the score, what to teach everybody again, each topic, and each student. */
export function markingDocument(printed: PrintedMarking): Document {
  const { marking, code, command } = printed;
  return {
    title: `Marks for sheet ${code}`,
    blocks: [
      headline(printed),
      paragraph(`Marked by the key of sheet ${code}: ${command}`, 'quiet'),
      heading('Students'),
      studentsTable(printed),
      ...(marking.notes.length > 0 ? [heading('To look at'), teachList(marking.notes.map(asSentence))] : []),
      heading('Teach again'),
      marking.teachAgain.length > 0 ? teachList(marking.teachAgain) : paragraph('Nothing.'),
      ...topicsBlocks(marking.topics),
      ...marking.students.flatMap((student) => studentBlocks(student, printed.pass)),
    ],
  };
}
