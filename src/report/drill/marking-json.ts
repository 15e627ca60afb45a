import type { MarkedAnswer, Marking, StudentMark, TopicMark } from '../../drill/marking/marking.js';
import { bare, DRILL_JSON_FORMAT } from './sheet-json.js';

const slipJson = (slip: MarkedAnswer['slip']) => (slip ? { slip: slip.slip, why: slip.why } : null);

function answerJson({ problem, text, verdict, read, slip, note }: MarkedAnswer) {
  return {
    number: problem.number,
    id: problem.id,
    topic: problem.topic,
    given: text,
    verdict,
    read:
      read === undefined
        ? null
        : typeof read === 'number' && problem.answer.kind === 'number'
          ? { value: bare('students.answers.read', read), unit: problem.answer.unit }
          : read,
    right_answer: problem.answer.text,
    slip: slipJson(slip),
    note: note ?? null,
  };
}

const topicJson = ({ topic, topicTitle, right, wrong, blank, slips }: TopicMark) => ({
  topic,
  topic_title: topicTitle,
  right,
  wrong,
  blank,
  slips: slips.map(({ slip, why, count }) => ({ slip, why, count })),
});

const studentJson = (mark: StudentMark, pass: number | undefined) => ({
  student: mark.student,
  right: mark.right,
  of: mark.of,
  percent: percentOf(mark),
  passed: pass === undefined ? null : percentOf(mark) >= pass,
  answers: mark.answers.map(answerJson),
  topics: mark.topics.map(topicJson),
  teach_again: [...mark.teachAgain],
});

/** Right answers in a hundred, not rounded; none of none is none. */
export const percentOf = ({ right, of }: Pick<StudentMark, 'right' | 'of'>): number =>
  of === 0 ? 0 : bare('percent', (100 * right) / of);

export interface PrintedMarking {
  marking: Marking;
  /** Fingerprint of the sheet that was marked. */
  code: string;
  command: string;
  /** Right answers in a hundred that pass; undefined where nothing was asked. */
  pass?: number;
}

/** A marked class as other programs read it. */
export function markingJson({ marking, code, command, pass }: PrintedMarking) {
  return {
    format: DRILL_JSON_FORMAT,
    question: 'drill mark',
    sheet: code,
    command,
    pass: pass ?? null,
    students: marking.students.map((student) => studentJson(student, pass)),
    topics: marking.topics.map(topicJson),
    teach_again: [...marking.teachAgain],
    notes: [...marking.notes],
  };
}
