import { timeAdvance } from './advance.js';
import { timeGrowth } from './growth.js';
import { sharedLay, trickleLay } from './lay.js';
import { type ResolveResult, timeResolve } from './resolve.js';
import { timeAgainst, timeStartUp } from './start-up.js';

const HELD_TO = { cold: 10, warm: 20, growth: 3, startUp: 2.2, across: 1.5, advance: 1000 };
const DEMO = ['bin/pumpyoke.js', 'check', 'data/examples/demo.yaml'];

let missed = 0;
/** A ratio with the limit it is held to, and a word when it misses it. */
function held(value: number, limit: number, sense: 'at least' | 'at most'): string {
  const kept = sense === 'at least' ? value >= limit : value <= limit;
  if (!kept) missed += 1;
  return `${value.toPrecision(3)}${kept ? '' : ` MISSED (${sense} ${limit})`}`;
}

function table(title: string, rows: Record<string, string | number>[]): void {
  process.stdout.write(`\n${title}\n`);
  const columns = Object.keys(rows[0]);
  const widths = columns.map((column) =>
    Math.max(column.length, ...rows.map((row) => String(row[column]).length)),
  );
  const line = (cells: string[]) =>
    `  ${cells.map((cell, index) => cell.padStart(widths[index])).join('  ')}\n`;
  process.stdout.write(line(columns));
  for (const row of rows) process.stdout.write(line(columns.map((column) => String(row[column]))));
}

const LAYS = { 'shared flow': sharedLay, 'same hose throughout': trickleLay } as const;

for (const [name, makeLay] of Object.entries(LAYS)) {
  const results: ResolveResult[] = [];
  for (const links of [22, 46, 406, 4006]) results.push(await timeResolve(makeLay(links)));
  for (const [start, limit] of [
    ['cold', HELD_TO.cold],
    ['warm', HELD_TO.warm],
  ] as const) {
    const from = start === 'cold' ? 'from a cold start' : 'from the last solutions';
    table(
      `EPANET's time over ours, re-solving at a new throttle ${from}; lays with ${name}`,
      results.map((result) => ({
        links: result.links,
        'runH after initH': held(result[start].run, limit, 'at least'),
        'runH, its own warm start': result[start].runWarm.toPrecision(3),
        'answers read too': result[start].answers.toPrecision(3),
        'read one by one': result[start].answersOneByOne.toPrecision(3),
        iterations: `${result.iterations[start]}`,
        "EPANET's": `${result.iterations.epanet}`,
        'psi apart': result.difference.psi.toExponential(1),
        'gpm apart': result.difference.gpm.toExponential(1),
        'us (EPANET, ours)': `${result.microseconds.epanetRun.toFixed(0)}, ${result.microseconds[start].toFixed(1)}`,
      })),
    );
  }
}

for (const [name, makeLay] of Object.entries(LAYS)) {
  const growth = timeGrowth([40, 400, 4000, 40000].map(makeLay));
  table(
    `Time per link over that of the shortest lay, lays with ${name}`,
    growth.map((result) => ({
      links: result.links,
      cold: held(result.cold, HELD_TO.growth, 'at most'),
      warm: held(result.warm, HELD_TO.growth, 'at most'),
      'all answers read: cold': result.coldRead.toPrecision(3),
      'all answers read: warm': result.warmRead.toPrecision(3),
      'iterations cold': result.coldIterations,
      'iterations warm': result.warmIterations,
    })),
  );
}

const advance = await timeAdvance();
table(
  'An advance with every option compared, beyond start-up, against one flow of the whole lay (processor time)',
  [
    {
      steps: advance.steps,
      options: advance.options,
      'ms an advance': held(advance.advance, HELD_TO.advance, 'at most'),
      'ms a flow': advance.flow.toPrecision(3),
      ratio: advance.ratio.toPrecision(3),
    },
  ],
);

try {
  const ratio = timeStartUp(DEMO);
  process.stdout.write(
    `\nA whole check of the demo over a bare node: ${held(ratio, HELD_TO.startUp, 'at most')}\n`,
  );
  const places = Array.from({ length: 20 }, (_, i) => `${i * 500} ft`).join(', ');
  const across = timeAgainst([...DEMO, '--across', places], DEMO);
  process.stdout.write(
    `A check across 20 places over one of the demo's own place: ${held(across, HELD_TO.across, 'at most')}\n`,
  );
} catch (error) {
  process.stdout.write(`\nStart-up was not timed: ${error instanceof Error ? error.message : error}\n`);
  missed += 1;
}
if (missed > 0) process.exitCode = 1;
