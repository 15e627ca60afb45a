import type { Impossibility } from '../../limits/impossible.js';
import type { CaseAnswer } from '../../study/answer.js';
import { type Block, type Cell, heading } from '../document.js';
import type { Figures } from '../figures.js';
import { impossibleBrief } from '../impossible.js';

function breaksCell({ breaks }: CaseAnswer): Cell {
  if (breaks.length === 0) return 'no limit';
  return { text: [...new Set(breaks)].map((code) => code.replaceAll('_', ' ')).join(', '), tone: 'care' };
}

/** No figure of a state that cannot be, and why. */
function withheld({ title }: CaseAnswer, why: Impossibility): Cell[] {
  return [title, { text: 'cannot be', tone: 'bad' }, '', impossibleBrief(why)];
}

/** States that are run whether anyone asks or not. */
export function casesSection(cases: CaseAnswer[], figures: Figures): Block[] {
  if (cases.length === 0) return [];
  return [
    heading('What if: run beside the question'),
    {
      kind: 'table',
      columns: [
        { title: 'Case' },
        { title: 'Flow', align: 'right' },
        { title: 'Highest in hose', align: 'right' },
        { title: 'Breaks' },
      ],
      rows: cases.map((one) =>
        one.impossible
          ? withheld(one, one.impossible)
          : [
              one.title,
              figures.say('cases.total_flow', 'flow', one.totalFlow),
              one.highestHose ? figures.say('cases.highest_hose', 'pressure', one.highestHose.pressure) : '',
              breaksCell(one),
            ],
      ),
    },
  ];
}
