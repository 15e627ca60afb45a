import { expect, test } from 'vitest';
import { makeSheet } from '../../src/drill/generate.js';
import { LEVELS } from '../../src/drill/problem.js';
import { loadRuleSet } from '../../src/drill/rules/load.js';
import { answerDocument } from '../../src/report/answer-document.js';
import { keyDocument } from '../../src/report/drill/key-document.js';
import { textOf } from '../../src/report/text.js';
import { operateLayout } from '../../src/study/operation.js';
import { engine, layoutOf } from '../study/support.js';

/** Articles that nobody would say aloud: `a appliance`, `an hose`, `a 8 mm tip`. */
function misspoken(text: string): string[] {
  const flat = text.replace(/\s+/g, ' ');
  const noAn =
    /\b[Aa] (?!one\b|once\b|uni|use|usual|US\b|and\b|alone\b|at\b|is\b|in\b)(?:[aeiouAEIOU][a-z]+|8\d*|1[18](?![\d.]))[^.]{0,20}/g;
  const noA = /\b[Aa]n (?![aeiouAEIOU]|8|1[18](?![\d.])|hour|honest|MIL\b|NFPA|SI\b)[^.]{0,20}/g;
  return [...(flat.match(noAn) ?? []), ...(flat.match(noA) ?? [])].filter(
    // `pump a eases` names a pump.
    (found) => !new RegExp(`(?:pump|into|of|[Pp]ump) ${found.slice(0, 2)}`).test(flat),
  );
}

test('what nobody would say aloud is found', () => {
  expect(misspoken('A part: a appliance of its own.')).toHaveLength(1);
  expect(misspoken('Take an hose, or a 8 mm tip.')).toHaveLength(2);
  expect(misspoken('An 8 mm tip, a hose, an appliance, a unit, an 11/16 in tip, a 110 psi line.')).toEqual(
    [],
  );
});

for (const name of ['wildland', 'engineering'] as const)
  for (const units of ['us', 'si'] as const)
    test(`no sheet by ${name} rules in ${units} units has such an article`, async () => {
      const rules = await loadRuleSet(name);
      for (const level of LEVELS) {
        const sheet = makeSheet({ topics: [], level, count: 80, seed: 11 + level, rules, units, choices: 4 });
        const text = textOf(keyDocument({ sheet, code: '0000-0000', command: '' }));
        expect(misspoken(text)).toEqual([]);
      }
    });

test('a part that the layout brings itself is named as it is spoken', async () => {
  const layout = layoutOf(`${engine()}lay:
  left:
    - {appliance: {loss: 5 psi}}
    - {valve: {k: 3, inside_diameter: 1.5 in}}
    - {hose: {inside_diameter: 1.5 in, coefficient: 24}, length: 100 ft}
    - {nozzle: {kind: automatic, pressure: 100 psi, flow_from: 10 gpm, flow_to: 60 gpm}}
`);
  expect(layout.lay[0].steps[0]).toMatchObject({ modelName: 'an appliance of its own' });
  expect(misspoken(textOf(answerDocument(await operateLayout(layout), 'us')))).toEqual([]);
});
