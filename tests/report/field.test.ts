import { expect, test } from 'vitest';
import { answerDocument } from '../../src/report/answer-document.js';
import { htmlOf } from '../../src/report/html.js';
import { markdownOf } from '../../src/report/markdown.js';
import { textOf } from '../../src/report/text.js';
import type { Answer } from '../../src/study/answer.js';
import { flowing, psi } from './answers.js';
import { reaching, requiring, unable } from './field-answers.js';

const textFor = (answer: Answer, width = 110, units: 'us' | 'si' = 'us'): string =>
  textOf(answerDocument(answer, units), { width }).replace(/\s+/g, ' ');

test('require says first whether it can be done, in which staging, at what throttle and discharge', () => {
  const text = textFor(requiring());
  expect(text).toMatch(
    /^CAN serve all 2 nozzles in series, a into b at 94 % throttle: pump a at 279 psi \(55 gpm\), pump b at 279 psi \(55 gpm\)/,
  );
  expect(text).toContain('The layout has the pumps in parallel: change the staging for this.');
  expect(text).toContain('the lay takes 277 psi at 108 gpm at left');
});

test('a pressure that is short by less than a psi is not rounded into enough', () => {
  expect(textFor(unable())).toMatch(
    /^CANNOT serve all 2 nozzles: at best in parallel, at full throttle, nozzle 3 gets 99\.7 psi of 100 psi, 0\.3 psi short/,
  );
});

test('where not all can be served, it says which can and whether every set was tried', () => {
  const text = textFor(unable());
  expect(text).toContain('1 of 2, in parallel at full throttle: open far nozzle; keep nozzle 3 shut.');
  expect(text).toContain('Not every set was tried: a larger one may exist.');
  expect(text).toContain('A booster stands in the line.');
});

test('a hand rule is stamped with its rule set and source, beside what was solved', () => {
  const text = textFor(requiring());
  expect(text).toContain('wildland 100 psi 79 psi 25 psi (5) 60 psi 264 psi nozzle 3');
  expect(text).toContain('solved 277 psi');
  expect(text).toContain('Wildland field rule: 5 psi for each appliance [NWCG Firefighter Math 3.4].');
});

test('downhill a sum may say that no pump is needed', () => {
  const answer = requiring();
  answer.rules[0].pressure = psi(-18);
  expect(textFor(answer)).toContain('none (-18 psi)');
});

test('the end-to-end habit is told with both figures', () => {
  expect(textFor(flowing())).toContain(
    'lose 106 psi to friction, with water leaving at each wye. Taking all 100 gpm to the far end would have said 240 psi.',
  );
});

test('length of hose and height are told apart, and a ridge with the pressure on it', () => {
  const text = textFor(flowing());
  expect(text).toContain('800 ft of hose along the slope (784 ft on the map), climbs 40 ft.');
  expect(text).toContain(
    'Goes over a RIDGE: 160 ft above the pump, 400 ft of hose out, with 12 psi in the hose.',
  );
  expect(text).toContain('Lowest point: 20 ft below the pump');
  expect(text).toContain('Of this hose 100 ft is taken as level');
});

test('an intake below its floor, and a tank that loses water, are said in words', () => {
  const text = textFor(flowing());
  expect(text).toContain('The intake stands at 18 psi, BELOW the 20 psi that is kept there.');
  expect(text).toContain(
    'Set the intake relief at 70 psi, before water flows. The layout sets it at 75 psi.',
  );
  expect(text).toContain('It LOSES water, and a full tank is dry after 50 min.');
});

test('an open nozzle that gets no water is named first', () => {
  const answer = flowing();
  answer.nozzles[0].flow = 0;
  expect(textFor(answer)).toMatch(/^FLOWS 44 gpm in parallel through 2 open nozzles; NO WATER at left/);
  answer.nozzles[1].flow = 0;
  expect(textFor(answer)).toMatch(/^NO WATER leaves in parallel: none reaches left and right/);
});

test('reach has a table a staging, marks what is not carried, and says where the hose would not bear it', () => {
  const text = textFor(reaching());
  expect(text).toMatch(
    /^REACHES over 20,000 ft \(level\), 1,632 ft and 730 ft high \(50 % up\) in parallel with no open lateral/,
  );
  expect(text).toContain('level over 20,000 ft + not at all');
  expect(text).toContain('50 % up 1,632 ft + 459 ft height gained, 50 % up 730 ft 205 ft');
  expect(text).toContain('20 % down 900 ft 700 ft height lost, 20 % down 176 ft 137 ft');
  expect(text).toContain('407 psi stand at the outlet, OVER the 300 psi of this hose');
});

for (const [name, make] of Object.entries({ flowing, requiring, unable, reaching })) {
  test(`${name}: Markdown and HTML have the figures that the text has`, () => {
    const figures = (text: string) =>
      new Set(
        text.match(/\d[\d,.]*\d? (?:psi|gpm|ft|gal|min|%)/g)?.map((one) => one.replace(/&nbsp;/g, ' ')),
      );
    const document = answerDocument(make(), 'us');
    const said = figures(textOf(document, { width: 110 }).replace(/\s+/g, ' '));
    const markdown = figures(markdownOf(document).replace(/\s+/g, ' '));
    const html = figures(
      htmlOf(document)
        .replace(/&nbsp;|\u00a0/g, ' ')
        .replace(/\s+/g, ' '),
    );
    for (const figure of said) {
      expect(markdown, `Markdown lacks ${figure}`).toContain(figure);
      expect(html, `HTML lacks ${figure}`).toContain(figure);
    }
    expect(said.size).toBeGreaterThan(3);
  });
}
