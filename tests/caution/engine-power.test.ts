import { expect, test } from 'vitest';
import { figuresIn } from '../../src/report/figures.js';
import { cautionText } from '../../src/report/sentence.js';
import { changed, checked, type Loose, sound } from './sound.js';

const HORSEPOWER = 745.6998715822702;

const found = async (change: (document: Loose) => void, code: string) =>
  (await checked(changed(change))).cautions.filter((caution) => caution.code === code);

const untold = (document: Loose, psi: number) => {
  document.site = { elevation: '6000 ft', air_temperature: '59 degF' };
  for (const name of ['a', 'b']) document.engine.pumps[name].model.power = undefined;
  document.typing = { custom: { flow: '120 gpm', pressure: `${psi} psi` } };
};

test('an engine with too little power is told with what the place leaves it and the speed that it holds', async () => {
  const [caution, ...more] = await found((d) => {
    d.site.elevation = '1500 ft';
    d.engine.pumps.a.model.power = { rated: '15 hp', aspiration: 'natural', fuel: 'gasoline' };
  }, 'power_limited');
  expect(more).toEqual([]);
  expect(caution).toMatchObject({ at: 'pump a', level: 'note' });
  // 3 % in the 1,000 ft above 500 ft.
  expect((caution.limit?.value as number) / HORSEPOWER).toBeCloseTo(15 * 0.97, 6);
  expect(cautionText(caution, 'message', figuresIn('us'))).toMatch(
    /engine of pump a cannot hold its governed speed.* its 14\.55 hp here turn the pump at \d\d % of rated speed/,
  );
});

test('a verdict that rests on power that no file gives is told at each pump, with the part that is left', async () => {
  // 83.5 % left at 6,000 ft: 337 psi here, at its limit some 0.89 and 0.84 of it, with the flow down too.
  const cautions = await found((d) => untold(d, 310), 'verdict_rests_on_power');
  expect(cautions.map(({ at, level }) => `${level} ${at}`)).toEqual(['warn pump a', 'warn pump b']);
  expect(cautionText(cautions[0], 'message', figuresIn('us'))).toMatch(
    /file of pump a gives no engine power: the verdict stands if its engine has power to spare, and falls short .* 8[34](\.\d)? % of that power left here/,
  );
});

test('neither is told where the verdict stands either way, nor where it falls short anyhow', async () => {
  expect(await found((d) => untold(d, 200), 'verdict_rests_on_power')).toEqual([]);
  expect(await found((d) => untold(d, 390), 'verdict_rests_on_power')).toEqual([]);
  expect((await checked(sound())).cautions).toEqual([]);
});
