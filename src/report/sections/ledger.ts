import type { LedgerAnswer, LedgerLine } from '../../study/engine-answer.js';
import { type Block, type Cell, heading, paragraph } from '../document.js';
import type { Figures } from '../figures.js';

function row(line: LedgerLine, figures: Figures): Cell[] {
  const { allowed, atLeast, operating, worst, margin, leftOut = [], unplaced } = line;
  const { dimension } = allowed;
  const limit = figures.stated('ledger.allowed', allowed, [worst]);
  // Suction head below none is water that boils: there is no such state.
  const held = (field: string, value: number) =>
    atLeast && value < 0 ? 'none' : figures.say(field, dimension, value, { limit: allowed.value });
  const part = figures.say('ledger.margin', 'ratio', margin, { signed: true, limit: 0 });
  return [
    `${line.at}: ${line.limit}`,
    `${atLeast ? 'at least' : 'at most'} ${limit}`,
    operating === undefined ? '' : held('ledger.operating', operating),
    unplaced ? `at least ${held('ledger.worst', worst)}` : held('ledger.worst', worst),
    margin < 0
      ? { text: atLeast && worst < 0 ? 'OVER' : `${part} OVER`, tone: 'bad' }
      : leftOut.length > 0 || unplaced
        ? { text: `at most ${part}`, tone: 'care' }
        : part,
    line.worstWhen,
  ];
}

/** Limits with their loads, tightest first. */
export function ledgerSection({ lines, of, notKnown }: LedgerAnswer, figures: Figures): Block[] {
  if (lines.length === 0) return [];
  const all = lines.length === of;
  const blocks: Block[] = [
    heading(all ? 'Every limit, tightest first' : `The ${lines.length} tightest of ${of} limits`),
    {
      kind: 'table',
      columns: [
        { title: 'Limit' },
        { title: 'Allowed', align: 'right' },
        { title: 'At work', align: 'right' },
        { title: 'Worst', align: 'right' },
        { title: 'Left', align: 'right' },
        { title: 'Worst is' },
      ],
      rows: lines.map((line) => row(line, figures)),
    },
  ];
  const leftOut = [...new Set(lines.flatMap((line) => line.leftOut ?? []))];
  if (leftOut.length > 0)
    blocks.push(
      paragraph(`Of the weights, nothing states that of ${leftOut.join('; ')}: the truck weighs more.`),
    );
  const unplaced = [...new Set(lines.flatMap((line) => line.unplaced ?? []))];
  if (unplaced.length > 0)
    blocks.push(
      paragraph(
        `Nothing states the place of ${unplaced.join(', ')}: taken as between the axles, it adds to what is shown.`,
      ),
    );
  if (notKnown.length > 0)
    blocks.push(paragraph(`Limit not known: ${notKnown.join(', ')}. Nothing is held against it.`, 'bad'));
  const sources = [...new Set(lines.map(({ source }) => source))];
  blocks.push(paragraph(`${all ? '' : 'All of them: --ledger. '}Sources: ${sources.join('; ')}.`, 'quiet'));
  return blocks;
}
