import { expect, test } from 'vitest';
import { answerDocument } from '../../src/report/answer-document.js';
import { textOf } from '../../src/report/text.js';
import { checkLayout } from '../../src/study/rating.js';
import { engineOf, layoutFrom, parabolic } from '../support/layouts.js';

/** Shut out by its check valve, it passes nothing; its file tells of a suction need at 110 gpm alone. */
const weak = () => parabolic(150, 75, 100, 120, { npsh_required: [['110 gpm', '20 ft']] });
const strong = () => parabolic(600, 75, 500, 150);
const FREE_CHECK = { check_valve: { k: 0, inside_diameter: '2 in' } };

const ask = (staging: string) =>
  checkLayout(
    layoutFrom({
      engine: engineOf(strong(), weak(), { plumbing: { discharge: [FREE_CHECK] } }),
      staging,
      typing: { custom: { flow: '60 gpm', pressure: '100 psi' } },
    }),
  );

test('a pump that passes nothing needs no suction head, and does not fail the engine', async () => {
  const [both, alone] = await Promise.all([ask('parallel'), ask('a')]);
  expect(alone.verdict).toBe('meets');
  expect(both.verdict).toBe('meets');
  expect(both.cautions.map(({ code }) => code)).not.toContain('suction_short');
});

test('a pump that is sure to cavitate fails it, and the first line says why', async () => {
  const answer = await checkLayout(
    layoutFrom({
      engine: engineOf(parabolic(600, 75, 500, 150, { npsh_required: [['10 gpm', '60 ft']] })),
      staging: 'a',
      typing: { custom: { flow: '60 gpm', pressure: '100 psi' } },
    }),
  );
  expect(answer.verdict).toBe('falls_short');
  expect(answer.atRequiredFlow).toBeUndefined();
  expect(textOf(answerDocument(answer, 'us')).replace(/\s+/g, ' ')).toMatch(
    /^FALLS SHORT of the requirement of the layout .*: 60 gpm cannot be had: pump a would cavitate: it needs 60 ft of suction head by its own file and has \d+ ft/,
  );
});

test('a need that its file does not reach warns and decides nothing', async () => {
  const answer = await checkLayout(
    layoutFrom({
      engine: engineOf(parabolic(600, 75, 500, 150, { npsh_required: [['100 gpm', '60 ft']] })),
      staging: 'a',
      typing: { custom: { flow: '60 gpm', pressure: '100 psi' } },
    }),
  );
  expect(answer.verdict).toBe('meets');
  expect(answer.cautions.find(({ code }) => code === 'suction_short')?.level).toBe('warn');
});
