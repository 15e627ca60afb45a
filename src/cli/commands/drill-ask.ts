import { createInterface, type Interface } from 'node:readline';
import type { GivenAnswer, MarkedAnswer } from '../../drill/marking/marking.js';
import type { Level, Problem } from '../../drill/problem.js';
import type { Block } from '../../report/document.js';
import { EXIT, type ExitStatus } from '../exit-status.js';
import type { Terminal } from '../terminal.js';
import { UsageFault } from '../usage-fault.js';
import { type GivenDrillOptions, sheetOptions } from './drill-options.js';
import { asked, newSeed, requestFor } from './drill-sheet.js';

const PROMPT = '> ';
const STUDENT = 'you';

/** One line after another from the terminal; none once it was ended. Leaves the terminal as it was. */
class Lines {
  readonly #readline: Interface;
  #ended = false;
  /** Lines that came before they were asked for: a quick hand types ahead. */
  readonly #ahead: string[] = [];
  #waiting: ((line: string | undefined) => void) | undefined;

  constructor() {
    this.#readline = createInterface({
      input: process.stdin,
      output: process.stdout,
      terminal: true,
      historySize: 0,
      prompt: PROMPT,
    });
    this.#readline.on('line', (line) => this.#give(line));
    this.#readline.on('SIGINT', () => this.#readline.close());
    this.#readline.on('close', () => {
      this.#ended = true;
      // What comes next must not stand on the line of the prompt.
      process.stdout.write('\n');
      this.#give(undefined);
    });
  }

  next(): Promise<string | undefined> {
    const ahead = this.#ahead.shift();
    if (ahead !== undefined || this.#ended) return Promise.resolve(ahead);
    this.#readline.prompt();
    return new Promise((resolve) => {
      this.#waiting = resolve;
    });
  }

  end(): void {
    if (!this.#ended) this.#readline.close();
  }

  #give(line: string | undefined): void {
    const waiting = this.#waiting;
    this.#waiting = undefined;
    if (waiting) waiting(line);
    else if (line !== undefined) this.#ahead.push(line);
  }
}

type Say = (blocks: Block[]) => void;

async function sayer(terminal: Terminal): Promise<Say> {
  const { textOf } = await import('../../report/text.js');
  return (blocks) => {
    const { colour, width } = terminal.out;
    process.stdout.write(textOf({ title: '', blocks }, { colour, width: process.stdout.columns || width }));
  };
}

type Mark = (problem: Problem, student: string, text: string) => MarkedAnswer;

interface Talk {
  lines: Lines;
  say: Say;
  mark: Mark;
}

/** Asks until there is an answer that can be marked; undefined where the student ends. */
async function answerTo(
  problem: Problem,
  last: Problem | undefined,
  talk: Talk,
): Promise<MarkedAnswer | undefined> {
  const { lines, say, mark } = talk;
  const { helpBlocks, workingBlocks } = await import('../../report/drill/tutor-blocks.js');
  const { paragraph } = await import('../../report/document.js');
  const { asSentence } = await import('../../report/words.js');
  for (;;) {
    const line = (await lines.next())?.trim();
    switch (line?.toLowerCase()) {
      case undefined:
      case 'q':
      case 'quit':
      case 'exit':
        return undefined;
      case '':
        say([paragraph('An answer, ? for the figures and rules, skip to go on, or q to end.')]);
        continue;
      case '?':
      case 'help':
        say(helpBlocks(problem));
        continue;
      case 'w':
        say(last ? workingBlocks(last) : [paragraph('There is no problem before this one.')]);
        continue;
      case 'skip':
        return mark(problem, STUDENT, '');
    }
    const marked = mark(problem, STUDENT, line ?? '');
    if (marked.verdict !== 'unreadable') return marked;
    say([paragraph(asSentence(marked.note ?? 'that cannot be read as an answer'), 'care')]);
  }
}

/** Poses problems one at a time until the count is reached or the student ends. */
export async function ask(given: GivenDrillOptions, terminal: Terminal): Promise<ExitStatus> {
  if (!process.stdin.isTTY || !process.stdout.isTTY) {
    throw new UsageFault(
      '--ask talks to a person at a terminal, and there is none here; without --ask a sheet is printed',
    );
  }
  const options = sheetOptions(given, newSeed());
  const [{ Tutor }, marking, blocks, say] = await Promise.all([
    import('../../drill/tutor.js'),
    import('../../drill/marking/marking.js'),
    import('../../report/drill/tutor-blocks.js'),
    sayer(terminal),
  ]);
  const { level, ...request } = await asked(() => requestFor(options));
  const tutor = new Tutor(request, level as Level);
  const problems: Problem[] = [];
  const answers: GivenAnswer[] = [];
  let right = 0;
  let posed = await asked(async () => tutor.next());
  say(blocks.welcomeBlocks(options.count, request.rules.title));
  const lines = new Lines();
  try {
    for (;;) {
      say(blocks.posedBlocks(posed, { count: options.count, right }));
      const marked = await answerTo(posed, problems.at(-1), { lines, say, mark: marking.markAnswer });
      if (!marked) break;
      problems.push(posed);
      answers.push({ student: STUDENT, problem: String(posed.number), text: marked.text });
      if (marked.verdict === 'right') right += 1;
      const step = tutor.take(marked);
      say(blocks.verdictBlocks(marked, step, tutor.level));
      if (problems.length >= options.count) break;
      posed = tutor.next();
    }
  } finally {
    lines.end();
  }
  say(blocks.summaryBlocks(marking.markClass(problems, answers), tutor.level));
  return EXIT.yes;
}
