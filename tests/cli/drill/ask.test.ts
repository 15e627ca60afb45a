import { spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { expect, test } from 'vitest';
import { EXECUTABLE } from '../run-built.js';

/** `script` of util-linux gives the program a terminal of its own. */
const SCRIPT = '/usr/bin/script';

interface Talk {
  said: string;
  status: number | null;
}

/** Talks to the program at a terminal: an answer is typed whenever it prompts, and not before. */
function talk(args: string[], answers: readonly string[]): Promise<Talk> {
  const command = [process.execPath, EXECUTABLE, 'drill', '--ask', ...args]
    .map((word) => `'${word}'`)
    .join(' ');
  const child = spawn(SCRIPT, ['-qefc', command, '/dev/null'], {
    env: { ...process.env, TERM: 'dumb', NO_COLOR: '1', COLUMNS: '80' },
  });
  const waiting = [...answers];
  let said = '';
  let heard = 0;
  child.stdout.setEncoding('utf8');
  child.stdout.on('data', (text: string) => {
    said += text;
    const prompts = said.match(/(?:^|[\nJ])> /g)?.length ?? 0;
    while (heard < prompts && waiting.length > 0) {
      heard += 1;
      child.stdin.write(`${waiting.shift()}\r`);
    }
  });
  return new Promise((resolve, reject) => {
    child.on('error', reject);
    child.on('close', (status) =>
      // biome-ignore lint/suspicious/noControlCharactersInRegex: a terminal is steered with them
      resolve({ said: said.replace(/\u001b\[[0-9;?]*[a-zA-Z]|\r/g, ''), status }),
    );
  });
}

const ONE = ['--topic', 'volume', '--level', '1', '--seed', '5', '--count'];

test.runIf(existsSync(SCRIPT))(
  'a problem is asked again until its answer can be read, then marked, and the end is summed up',
  { timeout: 60_000 },
  async () => {
    const { said, status } = await talk([...ONE, '2'], ['', 'a lot', '?', '1', 'skip']);
    expect(said).toContain('An answer, ? for the figures and rules, skip to go on, or q to end.');
    expect(said.match(/1 of 2/g)?.length ?? 0).toBeGreaterThan(0);
    expect(said).toMatch(/wrong|not right|Not right|WRONG/);
    expect(said).toMatch(/0 of 2|0 right/);
    expect(status).toBe(0);
  },
);

test.runIf(existsSync(SCRIPT))(
  'answers that are typed ahead are taken in their turn',
  { timeout: 60_000 },
  async () => {
    const { said, status } = await talk([...ONE, '2'], ['skip\rskip']);
    expect(said).toContain('Problem 2 of 2');
    expect(said).not.toContain('Nothing was answered');
    expect(status).toBe(0);
  },
);

test.runIf(existsSync(SCRIPT))(
  'q ends at once with what there was, and the answer is no failure',
  { timeout: 60_000 },
  async () => {
    const { said, status } = await talk([...ONE, '5'], ['q']);
    expect(status).toBe(0);
    expect(said).not.toContain('a fault of the program');
  },
);
