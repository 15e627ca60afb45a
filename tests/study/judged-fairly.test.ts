import { describe, expect, it } from 'vitest';
import { readLayoutText } from '../../src/layout/read-layout.js';
import { PSI } from '../../src/physics/customary.js';
import { checkLayout } from '../../src/study/rating.js';

const check = async (text: string) => checkLayout(readLayoutText(text, 'layout.yaml').layout);

const engine = (points: string, more = '') => `
engine:
  tank: {capacity: 500 gal}
  pumps: {a: {model: {points: ${points}}}}
${more}
staging: a
`;

describe('a verdict', () => {
  it('is given at the lift of the rating point: 10 ft of 60 degF water cost 4.33 psi at the outlet', async () => {
    const points = '[[0 gpm, 300 psi], [100 gpm, 252 psi], [200 gpm, 150 psi]]';
    const typing = (lift: string) => `typing: {points: [{flow: 100 gpm, pressure: 250 psi${lift}}]}`;
    const level = await check(engine(points) + typing(''));
    const lifted = await check(engine(points) + typing(', lift: 10 ft'));
    expect((level.atRequiredFlow?.margin ?? 0) / PSI).toBeCloseTo(2, 3);
    expect((lifted.atRequiredFlow?.margin ?? 0) / PSI).toBeCloseTo(2 - 4.33, 2);
    expect([level.verdict, lifted.verdict]).toEqual(['meets', 'falls_short']);
  });

  it('is yes where the pump makes just what is asked, whatever its figures round to', async () => {
    for (let i = 0; i < 20; i++) {
      const psi = 200.3 + 3.7 * i;
      const points = `[[0 gpm, ${psi + 90} psi], [${61 + i} gpm, ${psi} psi], [150 gpm, 60 psi], [170 gpm, 10 psi]]`;
      const answer = await check(`${engine(points)}typing: {flow: ${61 + i} gpm, pressure: ${psi} psi}`);
      expect(answer.verdict, `${psi} psi`).toBe('meets');
    }
  });

  it('warns of a governor that would not give what is judged', async () => {
    const points = '[[0 gpm, 400 psi], [100 gpm, 352 psi], [200 gpm, 150 psi]]';
    const typing = 'typing: {flow: 100 gpm, pressure: 250 psi}';
    const codes = async (held: string) =>
      (await check(`${engine(points)}throttle: {discharge_pressure: ${held}}\n${typing}`)).cautions.map(
        ({ code }) => code,
      );
    expect(await codes('220 psi')).toContain('governor_below_requirement');
    expect(await codes('260 psi')).not.toContain('governor_below_requirement');
  });
});
