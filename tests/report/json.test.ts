import { expect, test } from 'vitest';
import * as z from 'zod';
import { InternalFault } from '../../src/report/checked-number.js';
import { toJson } from '../../src/report/json.js';
import { answerJson, checkJson, flowJson } from '../../src/report/json-schema.js';
import type { Answer } from '../../src/study/answer.js';
import { flowing, meeting, outOfReach, powerUntold, short, shortOnTank } from './answers.js';
import { reaching, requiring, unable } from './field-answers.js';

const EVERY: Record<string, () => Answer> = {
  meeting,
  short,
  shortOnTank,
  outOfReach,
  flowing,
  requiring,
  unable,
  reaching,
  powerUntold,
};

for (const [name, make] of Object.entries(EVERY)) {
  for (const units of ['us', 'si'] as const) {
    test(`${name} has the shape that is written down, in ${units}, also after a way through text`, () => {
      const json = toJson(make(), units);
      expect(answerJson.parse(json)).toEqual(json);
      expect(JSON.parse(JSON.stringify(json))).toEqual(json);
    });
  }
}

test('quantities come in the units that were asked for, without the dust of a change of units', () => {
  const us = toJson(meeting(), 'us');
  expect(us.at_required_flow).toEqual({
    pressure: { value: 271.3, unit: 'psi' },
    margin: { value: 21.3, unit: 'psi' },
  });
  expect(us.test_orifice?.bore).toEqual({ value: 0.716, unit: 'in' });
  expect(us.site.elevation).toEqual({ value: 4300, unit: 'ft' });
  expect(us.stagings[0].shares[0].share.unit).toBe('%');
  expect(us.stagings[0].shares[0].share.value).toBeCloseTo(49.2667, 3);
  expect(us.inventory[2].carried).toEqual({ value: 3, unit: 'each' });
  const si = toJson(meeting(), 'si');
  expect(si.at_required_flow?.pressure.unit).toBe('kPa');
  expect(si.at_required_flow?.pressure.value).toBeCloseTo(271.3 * 6.894757, 2);
  expect(si.cautions[0].message).toContain('2,549 kPa');
});

test('a key without a value is null, and test_orifice alone is left out', () => {
  const json = toJson(outOfReach(), 'us');
  expect(json.at_required_flow).toBeNull();
  expect(json.at_required_pressure).toBeNull();
  expect(json).not.toHaveProperty('test_orifice');
});

test('a verdict is not rounded', () => {
  const answer = meeting();
  if (answer.atRequiredFlow) answer.atRequiredFlow.pressure = 1_723_700.123456;
  const json = toJson(answer, 'si');
  expect(json.at_required_flow?.pressure.value).toBe(1723.70012346);
});

for (const bad of [Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]) {
  test(`${bad} is a fault that names its field and never reaches the output`, () => {
    const answer = meeting();
    answer.losses[1].loss = bad;
    expect(() => toJson(answer, 'us')).toThrow(InternalFault);
    expect(() => toJson(answer, 'us')).toThrow(/losses\[1\]\.loss/);
  });
}

test('an undefined that a type let through is a fault too', () => {
  const answer = flowing();
  answer.title = undefined as unknown as string;
  expect(() => toJson(answer, 'us')).toThrow(/title/);
});

test('every key of the shapes is described where its name does not say all, and both give a JSON Schema', () => {
  for (const shape of [checkJson, flowJson]) {
    const schema = z.toJSONSchema(shape);
    expect(schema.title).toMatch(/^Answer of pumpyoke/);
    expect(JSON.stringify(schema)).toContain('"description"');
    const keys = Object.entries(schema.properties ?? {});
    const quantities = keys.filter(([, value]) => JSON.stringify(value).includes('"unit"'));
    expect(quantities.length).toBeGreaterThan(3);
  }
});
