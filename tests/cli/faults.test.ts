import { spawn, spawnSync } from 'node:child_process';
import {
  chmodSync,
  copyFileSync,
  existsSync,
  linkSync,
  lstatSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeEach, describe, expect, test } from 'vitest';
import { EXECUTABLE, example, pumpyoke } from './run-built.js';

const folders: string[] = [];
let folder = '';
const at = (name: string) => join(folder, name);

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'pumpyoke-faults-'));
  folders.push(folder);
  for (const name of ['demo.yaml', 'demo-engine.yaml']) copyFileSync(example(name), at(name));
});

afterAll(() => {
  for (const each of folders) rmSync(each, { recursive: true, force: true });
});

/** A line for the shell, with `$P` for the program, in the folder of the test. */
function shell(line: string) {
  const { status, stdout, stderr } = spawnSync('bash', ['-c', line], {
    cwd: folder,
    encoding: 'utf8',
    timeout: 60_000,
    env: { ...process.env, P: `${process.execPath} ${EXECUTABLE}` },
  });
  return { status, out: stdout, err: stderr };
}

const ONE_LINE = /^error: [^\n]+\n$/;

describe('an answer that does not arrive', () => {
  for (const line of ['check demo.yaml', 'check demo.yaml --json', '--help', '--version', 'drill --seed 3']) {
    test(`${line} > /dev/full: status 74 and one line`, () => {
      const { status, err } = shell(`$P ${line} > /dev/full`);
      expect(status).toBe(74);
      expect(err).toMatch(ONE_LINE);
      expect(err).toContain('the disk is full');
    });
  }

  test('--out onto a full disk: status 74 and one line', () => {
    const { status, err } = shell('$P check demo.yaml --out /dev/full');
    expect(status).toBe(74);
    expect(err).toMatch(ONE_LINE);
  });

  test('past a limit on the size of files standard output ends in status 74', () => {
    const { status, err } = shell('ulimit -f 1; $P check demo.yaml --json > part.json');
    expect(status).toBe(74);
    expect(err).toMatch(/limit on the size of files/);
  });

  test('past that limit --out leaves the old file, and nothing beside it', () => {
    writeFileSync(at('old.json'), 'old');
    const before = readdirSync(folder);
    const { status } = shell('ulimit -f 1; $P check demo.yaml --out old.json');
    expect(status).toBe(74);
    expect(readFileSync(at('old.json'), 'utf8')).toBe('old');
    expect(readdirSync(folder)).toEqual(before);
  });

  test('a reader that stops early is no fault, and a slow one gets everything', () => {
    expect(shell('set -o pipefail; $P check demo.yaml --json | head -1')).toEqual({
      status: 0,
      out: '{\n',
      err: '',
    });
    const { out } = shell('$P drill --seed 3 --count 200 --key | (sleep 1; wc -c)');
    const whole = pumpyoke(['drill', '--seed', '3', '--count', '200', '--key']).out;
    expect(Buffer.byteLength(whole)).toBeGreaterThan(65_536);
    expect(Number(out)).toBe(Buffer.byteLength(whole));
  });

  test('where standard error is full too, the status alone says what was wrong', () => {
    expect(shell('$P check nowhere.yaml 2> /dev/full').status).toBe(2);
    expect(shell('$P check demo.yaml > /dev/full 2> /dev/full').status).toBe(74);
  });
});

describe('--out over what is read', () => {
  const names: [string, () => string][] = [
    ['the layout itself', () => 'demo.yaml'],
    ['another spelling of it', () => './/../'.concat(folder.split('/').at(-1) ?? '', '/demo.yaml')],
    ['the file of the engine', () => 'demo-engine.yaml'],
    ['a symbolic link to it', () => 'link'],
    ['a hard link to the engine', () => 'hard'],
  ];
  for (const [title, name] of names) {
    test(`${title} is refused, and nothing is lost`, () => {
      symlinkSync('demo.yaml', at('link'));
      linkSync(at('demo-engine.yaml'), at('hard'));
      const { status, err } = shell(`$P check demo.yaml --out ${name()}`);
      expect(status).toBe(2);
      expect(err).toMatch(/would write over/);
      for (const file of ['demo.yaml', 'demo-engine.yaml'])
        expect(readFileSync(at(file), 'utf8')).toBe(readFileSync(example(file), 'utf8'));
    });
  }

  test('the layout on standard input', () => {
    const { status } = shell('$P flow - --out demo.yaml < demo.yaml');
    expect(status).toBe(2);
    expect(readFileSync(at('demo.yaml'), 'utf8')).toBe(readFileSync(example('demo.yaml'), 'utf8'));
  });

  test('rules, a layout and answers of a drill', () => {
    writeFileSync(at('own.yaml'), 'title: mine\n');
    shell('$P drill --seed 3 --count 3 --quiet --out q.txt --form-out form.csv');
    expect(shell('$P drill mark form.csv --out form.csv').err).toMatch(/would write over form\.csv/);
    expect(shell('$P drill --layout demo.yaml --list-topics --out demo-engine.yaml').status).toBe(2);
  });

  for (const [one, two] of [
    ['--out s.txt', '--key-out ./s.txt'],
    ['--out s.txt', '--form-out s.txt'],
    ['--key-out s.txt', '--form-out ./s.txt'],
  ]) {
    test(`${one} and ${two} are one file`, () => {
      const { status, err } = shell(`$P drill --seed 3 ${one} ${two}`);
      expect(status).toBe(2);
      expect(err).toMatch(/name the same file/);
      expect(existsSync(at('s.txt'))).toBe(false);
    });
  }
});

describe('--out in the place of an old file', () => {
  test('keeps its mode', () => {
    writeFileSync(at('old.txt'), 'old');
    chmodSync(at('old.txt'), 0o640);
    expect(shell('$P check demo.yaml --quiet --out old.txt').status).toBe(0);
    expect(statSync(at('old.txt')).mode & 0o777).toBe(0o640);
    expect(readFileSync(at('old.txt'), 'utf8')).toMatch(/^MEETS/);
  });

  test('goes through a link to the file behind it, there or not', () => {
    symlinkSync('behind.txt', at('link.txt'));
    for (const _ of [1, 2]) {
      expect(shell('$P check demo.yaml --quiet --out link.txt').status).toBe(0);
      expect(lstatSync(at('link.txt')).isSymbolicLink()).toBe(true);
      expect(readFileSync(at('behind.txt'), 'utf8')).toMatch(/^MEETS/);
    }
  });

  test('a descriptor, a device and a pipe are written to as they stand', () => {
    const plain = pumpyoke(['check', at('demo.yaml'), '--quiet']).out;
    expect(shell('$P check demo.yaml --quiet --out /dev/stdout').out).toBe(plain);
    expect(shell('echo head > f; $P check demo.yaml --quiet --out /dev/stdout >> f; cat f').out).toBe(
      `head\n${plain}`,
    );
    expect(shell('$P check demo.yaml --quiet --out /dev/null').status).toBe(0);
    expect(shell('mkfifo p; cat p & $P check demo.yaml --quiet --out p; wait').out).toBe(plain);
  });

  for (const [out, why] of [
    ['no/such/folder.txt', /its folder does not exist/],
    ['.', /it is a folder/],
    ['demo.yaml/x', /a part of its path is no folder/],
  ] as const) {
    test(`${out} is refused as a mistake`, () => {
      const { status, err } = shell(`$P check demo.yaml --out ${out}`);
      expect(status).toBe(2);
      expect(err).toMatch(why);
    });
  }

  test('a signal at any moment leaves the old file or the whole new one, and nothing beside it', async () => {
    const whole = pumpyoke(['drill', '--seed', '3', '--count', '60', '--key']).out.length;
    writeFileSync(at('sheet.txt'), 'old');
    const before = readdirSync(folder);
    for (let i = 0; i < 12; i++) {
      const args = ['drill', '--seed', '3', '--count', '60', '--key', '--quiet', '--out', at('sheet.txt')];
      const child = spawn(process.execPath, [EXECUTABLE, ...args], { stdio: 'ignore' });
      await new Promise((resolve) => {
        const timer = setTimeout(() => child.kill(i % 2 ? 'SIGINT' : 'SIGTERM'), 100 + 90 * i);
        child.on('exit', () => {
          clearTimeout(timer);
          resolve(undefined);
        });
      });
      expect(['old'.length, whole]).toContain(readFileSync(at('sheet.txt'), 'utf8').length);
      expect(readdirSync(folder)).toEqual(before);
    }
  });
});

describe('what is read', () => {
  const sheet = 'pumpyoke drill --mix --level 2 --count 3 --seed 3 --units us';
  const answers = (row: string) => `sheet,${row}\nstudent,1,2,3\nanna,1,2,3\n`;

  for (const [file, why] of [
    ['/dev/zero', /device/],
    ['.', /folder/],
    ['nowhere.csv', /no such file/],
    ['large.csv', /larger than 5 MB/],
    ['empty.csv', /./],
  ] as const) {
    test(`drill mark ${file} is refused in words`, () => {
      writeFileSync(at('large.csv'), answers(sheet).padEnd(6_000_000, 'a,1,2,3\n'));
      writeFileSync(at('empty.csv'), '');
      const { status, err } = shell(`$P drill mark ${file}`);
      expect(status).toBe(2);
      expect(err).toMatch(ONE_LINE);
      expect(err).toMatch(why);
    });
  }

  test('a pipe that nobody writes to does not hang', () => {
    expect(shell('mkfifo p; timeout 20 $P drill mark p').status).toBe(2);
  });

  test('standard input without end is refused, a pipe of the shell is read', () => {
    expect(shell('$P drill mark - < /dev/zero').err).toMatch(/larger than 5 MB/);
    writeFileSync(at('a.csv'), answers(sheet));
    expect(shell('$P drill mark <(cat a.csv)').status).toBe(0);
    expect(shell('cat a.csv | $P drill mark -').status).toBe(0);
    expect(shell("printf '\\xef\\xbb\\xbf' | cat - a.csv | $P drill mark -").status).toBe(0);
  });

  test('more students than a class has are refused in words', () => {
    const rows = Array.from({ length: 60_000 }, (_, i) => `s${i},1,2,3`).join('\n');
    writeFileSync(at('many.csv'), `sheet,${sheet}\nstudent,1,2,3\n${rows}\n`);
    const { status, err } = shell('$P drill mark many.csv');
    expect(status).toBe(2);
    expect(err).toMatch(/more than 100,000 answers/);
  });

  for (const [option, file] of [
    ['--rules', 'secret.yaml'],
    ['--layout', 'demo.yaml'],
  ]) {
    test(`the ${option} of a student's row is not opened, and the trainer is told to name it`, () => {
      writeFileSync(at('secret.yaml'), 'a secret');
      writeFileSync(at('a.csv'), answers(`${sheet} ${option} ${file}`));
      const { status, out, err } = shell('$P drill mark a.csv');
      expect(status).toBe(2);
      expect(out + err).not.toMatch(/a secret/);
      expect(err).toContain(`add ${option} FILE`);
    });
  }

  test('rows that name different sheets are told of', () => {
    writeFileSync(at('a.csv'), answers(sheet));
    writeFileSync(at('b.csv'), answers(sheet.replace('--seed 3', '--seed 4')));
    expect(shell('$P drill mark a.csv b.csv --format json').out).toMatch(
      /b\.csv: its first row names another/,
    );
  });

  test('marks as CSV hold no control character and no formula', () => {
    writeFileSync(at('a.csv'), `sheet,${sheet}\nstudent,1,2,3\n\x1b[31m=a,@b,\x07,-x\n =1+1,+1,2,3\n`);
    const { status, out } = shell('$P drill mark a.csv --format csv');
    expect(status).toBe(0);
    // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is looked for
    expect(out).not.toMatch(/[\u0000-\u0009\u000b\u000c\u000e-\u001f\u007f]/);
    expect(out).not.toMatch(/(?:^|[,\n])"? *[=@]/);
  });

  test('numbers of laterals are written out', () => {
    for (const given of ['1e1,0x3', '0x3', '1.0', '+1', '-1'])
      expect(shell(`$P reach ${example('lay.yaml')} --laterals=${given}`).err).toMatch(/write 0,1,2,4/);
  });
});
