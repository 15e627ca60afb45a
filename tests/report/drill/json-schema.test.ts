import { expect, test } from 'vitest';
import { drillJson, drillMarkJson, drillQuestionsJson } from '../../../src/report/drill/json-schema.js';
import { markingJson } from '../../../src/report/drill/marking-json.js';
import { sheetJson } from '../../../src/report/drill/sheet-json.js';
import { marked, printed } from './sheets.js';

const code = '9F3A-1C2B';
const { command } = printed();

test('what is printed is what the schemas say, key for key', () => {
  for (const [schema, tree] of [
    [drillJson, sheetJson(printed())],
    [drillQuestionsJson, sheetJson(printed(), false)],
    [drillMarkJson, markingJson({ marking: marked(), code, command })],
    [drillMarkJson, markingJson({ marking: marked(), code, command, pass: 70 })],
  ] as const) {
    expect(schema.parse(tree)).toEqual(tree);
  }
});

test('a sheet whose key is apart is no sheet with its key', () => {
  expect(drillJson.safeParse(sheetJson(printed(), false)).success).toBe(false);
  expect(drillQuestionsJson.safeParse(sheetJson(printed())).success).toBe(false);
});
