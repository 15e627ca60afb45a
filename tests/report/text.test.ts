import { expect, test } from 'vitest';
import { answerDocument } from '../../src/report/answer-document.js';
import { type TextOptions, textOf } from '../../src/report/text.js';
import type { Answer } from '../../src/study/answer.js';
import { flowing, meeting, outOfReach, powerUntold, short, shortOnTank } from './answers.js';
import { reaching, requiring, unable } from './field-answers.js';

const textFor = (answer: Answer, options: TextOptions = {}, units: 'us' | 'si' = 'us'): string =>
  textOf(answerDocument(answer, units), options);

/** As one line, so that a fact can be looked for wherever the lines break. */
const flat = (text: string): string => text.replace(/\s+/g, ' ');

// biome-ignore lint/suspicious/noControlCharactersInRegex: colour is made of them
const COLOUR = /\u001b\[\d+m/g;

const EVERY = { meeting, short, shortOnTank, outOfReach, flowing, requiring, unable, reaching, powerUntold };

test('the verdict is the first thing said, with both margins', () => {
  expect(flat(textFor(meeting()))).toMatch(
    /^MEETS NWCG engine type 3 in parallel: 271 psi at 150 gpm \(21 psi over\), 161 gpm at 250 psi \(11 gpm over\)/,
  );
});

test('one more digit shows where a whole figure would hide on which side it falls', () => {
  const text = flat(textFor(short()));
  expect(text).toMatch(
    /^FALLS SHORT of NWCG engine type 3 in parallel: 249\.6 psi at 150 gpm \(0\.4 psi short\)/,
  );
  expect(text).toContain('149.9 gpm at 250 psi (0.1 gpm short)');
  expect(text).toContain('(600.2 psi, limit 600 psi)');
});

test('in other units, too, the predicted figure reads as falling on its true side of the required one', () => {
  const answer = short();
  const near = { pressure: answer.requirement.pressure - 40, margin: -40 };
  answer.atRequiredFlow = near;
  answer.stagings[0].atRequiredFlow = near;
  const [, predicted] = /parallel: ([\d,.]+) kPa at/.exec(flat(textFor(answer, {}, 'si'))) ?? [];
  const [, required] = /L\/min at ([\d,.]+) kPa/.exec(flat(textFor(answer, {}, 'si'))) ?? [];
  const read = (figure: string) => Number(figure.replaceAll(',', ''));
  expect(read(predicted)).toBeLessThan(read(required));
});

test('a failing inventory is named in the verdict, and the pumps are cleared', () => {
  expect(flat(textFor(shortOnTank()))).toMatch(
    /^FALLS SHORT of NWCG engine type 3 on tank; the pumps meet it in parallel: 271 psi/,
  );
});

test('a staging that cannot pass the flow says so instead of printing a figure', () => {
  expect(flat(textFor(outOfReach()))).toMatch(
    /^FALLS SHORT of NWCG engine type 3 on pump a alone: the pumps cannot pass 150 gpm, 250 psi is never reached/,
  );
});

test('what must not be run stands beside the verdict', () => {
  const lines = textFor(short()).split('\n');
  const stop = lines.findIndex((line) => line.startsWith('STOP, do not run it so'));
  expect(stop).toBeGreaterThan(0);
  expect(stop).toBeLessThan(5);
  expect(textFor(meeting())).not.toContain('STOP');
});

test('stagings stand before losses, losses before cautions, cautions before orifice, inventory, points, assumptions', () => {
  const text = textFor(meeting());
  const places = [
    'Stagings side by side',
    'Where the pressure goes',
    'Cautions, most dangerous first',
    "The agency's test orifice",
    'Inventory, line by line',
    'Gauge points',
    'What this rests on',
  ].map((title) => text.indexOf(title));
  expect(places).not.toContain(-1);
  expect(places).toEqual([...places].sort((a, b) => a - b));
});

test('the orifice reading comes with its grade and what the next grade wants', () => {
  const text = flat(textFor(meeting()));
  expect(text).toContain('With the 0.716 in orifice (discharge coefficient 0.62)');
  expect(text).toContain('should read 263 psi while 154 gpm flows: acceptable, 13 psi over');
  expect(text).toContain('The next grade, good, starts at 312.5 psi: 49 psi more.');
});

test('the highest grade has no next', () => {
  const answer = meeting();
  if (answer.testOrifice) answer.testOrifice.reading = answer.testOrifice.grades[0].from;
  expect(flat(textFor(answer))).toContain('There is no higher grade.');
});

test('a caution gives number, limit, place, what to do and source', () => {
  const text = flat(textFor(meeting()));
  expect(text).toContain(
    '- WARN at hose 1 of the test line Pressure in hose 1 of the test line reaches 370 psi at shutoff, above 360 psi.',
  );
  expect(text).toContain(
    'Do: Keep the nozzle moving off shut, or carry hose of a higher service test pressure.',
  );
  expect(text).toContain('Source: common practice, no source.');
});

test('people are counted and a maximum says that it is one', () => {
  const text = flat(textFor(meeting()));
  expect(text).toContain('crew 3 3 MEETS');
  expect(text).toContain('gross weight at most 26,000 lb 23,170 lb MEETS');
});

test('a long list of losses ends in a count and a bound', () => {
  const answer = meeting();
  const [first] = answer.losses;
  answer.losses = Array.from({ length: 40 }, (_, i) => ({
    ...first,
    where: `hose ${i + 1}`,
    loss: first.loss / (i + 1),
  }));
  const text = flat(textFor(answer));
  expect(text).toContain('hose 12 ');
  expect(text).not.toContain('hose 13 ');
  expect(text).toContain('28 more, none over 2.1 psi.');
});

test('flow says what leaves, which nozzle is off its range, and which pump is shut out', () => {
  const text = flat(textFor(flowing()));
  expect(text).toMatch(/^FLOWS 44 gpm in parallel through 2 open nozzles; out of working range: right STOP/);
  expect(text).toContain('right 22 gpm 31 psi 6.7 lbf 41 ft OUT OF RANGE (from 40 psi)');
  expect(text).toContain('State running SHUT OUT');
  expect(text).toContain(
    '40 gal fill the hose first and 50 gal are kept back, which leaves 410 gal of 500 gal. As it runs down it lasts 9.4 min.',
  );
});

test('the sources of a report are in it, and no sentence ends twice', () => {
  for (const make of Object.values(EVERY)) {
    const text = flat(textFor(make(), { width: 110 }));
    expect(text).not.toMatch(/[^.]\.\.( |$)/);
    for (const caution of make().cautions) expect(text).toContain(caution.source);
    for (const { source } of make().assumptions) if (source) expect(text).toContain(source);
  }
});

for (const [name, make] of Object.entries(EVERY)) {
  for (const width of [24, 40, 60, 80, 110]) {
    for (const units of ['us', 'si'] as const) {
      test(`${name}: no line is wider than ${width} columns, in ${units}`, () => {
        const wide = textFor(make(), { width }, units)
          .split('\n')
          .filter((line) => [...line].length > width);
        expect(wide).toEqual([]);
      });
    }
  }

  test(`${name}: the very last line defers to the agency, the makers and an acceptance test, in one line of 80`, () => {
    const last = textFor(make()).trimEnd().split('\n').at(-1);
    expect(last).toMatch(/agency.*makers' limits.*acceptance test/);
  });

  test(`${name}: colour only adds to the words`, () => {
    const coloured = textFor(make(), { colour: true });
    expect(coloured).toMatch(COLOUR);
    expect(coloured.replace(COLOUR, '')).toBe(textFor(make()));
    expect(textFor(make())).not.toMatch(COLOUR);
  });

  test(`${name}: brief keeps the verdict and who decides`, () => {
    const whole = textOf(answerDocument(make(), 'us'));
    const brief = textOf(answerDocument(make(), 'us', true));
    expect(brief.split('\n')[0]).toBe(whole.split('\n')[0]);
    expect(brief.trimEnd().split('\n').at(-1)).toBe(whole.trimEnd().split('\n').at(-1));
    expect(brief.split('\n').length).toBeLessThan(12);
  });
}

test('a title out of a file cannot steer the terminal', () => {
  const answer = meeting();
  answer.title = 'A\u001b[2J\u0007\u202eB\nC';
  const text = textFor(answer);
  // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what must be gone
  expect(text).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u202e]/);
  expect(text).toContain('A\ufffd[2J\ufffd\ufffdB C');
});

test('a figure stays on one line with its unit', () => {
  for (let width = 30; width < 90; width++) {
    expect(textFor(meeting(), { width })).not.toMatch(/\d\n *(psi|gpm|ft|gal|lb|degF)\b/);
  }
});

test('where power is not told, both bounds of how high it stands are said, and rows that rest on power to spare say so', () => {
  const text = flat(textFor(powerUntold()));
  expect(text).toContain('up to 1,266 ft by constant power, up to 1,010 ft by flat torque');
  expect(text).toContain('Only if it has power to spare: to 19,685 ft above sea level');
  expect(text).not.toContain('make it as high as is looked');
  expect(text).toContain('these rows take it to have power to spare');
});
