import { sentence } from '../../report/words.js';
import type { ReachAnswer } from '../../study/answer.js';
import { addThrottleOption, atThrottle, collectNames } from '../field-options.js';
import type { LayoutCommand } from '../layout-command.js';
import { UsageFault } from '../usage-fault.js';

interface Given {
  hose?: string;
  nozzle?: string;
  slopes?: string[];
  laterals?: string[];
  throttle?: string;
}

/** More laterals than this are a mistyped figure; common practice, no source. */
const MOST_LATERALS = 60;

async function gradesOf(texts: string[] | undefined): Promise<number[] | undefined> {
  if (!texts) return undefined;
  const { parseQuantity } = await import('../../quantity/parse.js');
  return texts.map((text) => {
    if (text === 'level') return 0;
    const parsed = parseQuantity(text, 'ratio');
    if ('problem' in parsed) throw new UsageFault(sentence(`--slopes: ${parsed.problem}`));
    return parsed.value;
  });
}

function countsOf(texts: string[] | undefined): number[] | undefined {
  return texts?.map((text) => {
    const count = Number(text);
    if (!/^\d+$/.test(text) || count > MOST_LATERALS)
      throw new UsageFault(
        `--laterals ${text}: whole numbers from 0 to ${MOST_LATERALS} are wanted, set apart by commas: write 0,1,2,4.`,
      );
    return count;
  });
}

async function modelOf<K extends 'hose' | 'nozzle'>(kind: K, word: string) {
  const { loadCatalogue } = await import('../../catalogue/load.js');
  const catalogue = loadCatalogue();
  const id = catalogue.idOf(kind, word);
  const model = id === undefined ? undefined : catalogue.find(kind, id);
  if (id !== undefined && model) return { id, model, modelName: model.name ?? id };
  const { closeId } = await import('../../catalogue/ids.js');
  const meant = closeId(word, catalogue.ids(kind));
  throw new UsageFault(
    `the catalogue has no ${kind} ${word}${meant ? `: did you mean ${meant}?` : `. pumpyoke catalogue ${kind} lists what there is.`}`,
  );
}

export const reach: LayoutCommand<ReachAnswer, Given> = {
  name: 'reach',
  summary: 'how far and how high does each staging take a nozzle, by slope and open laterals?',
  examples: [
    'pumpyoke reach lay.yaml',
    'pumpyoke reach lay.yaml --slopes "level,20 %,40 %,-30 %" --laterals 0,2,4',
    'pumpyoke reach lay.yaml --hose forestry-1.5 --nozzle fog-20',
  ],
  options: (command) =>
    addThrottleOption(
      command
        .option('--hose <id>', "trunk of this hose of the catalogue instead of the lay's first")
        .option('--nozzle <id>', "this nozzle at the end instead of the lay's last")
        .option(
          '--slopes <grades>',
          'slopes of the table, a fall is negative: "level,20 %,-30 %"',
          collectNames,
        )
        .option('--laterals <counts>', 'numbers of open laterals: 0,1,2,4', collectNames),
    ),
  ask: async (layout, given) => {
    const grades = await gradesOf(given.slopes);
    const laterals = countsOf(given.laterals);
    const hose = given.hose === undefined ? undefined : await modelOf('hose', given.hose);
    const nozzle = given.nozzle === undefined ? undefined : await modelOf('nozzle', given.nozzle);
    const at = await atThrottle(layout, given.throttle);
    if (given.throttle !== undefined && at.throttle.by !== 'speed')
      throw new UsageFault(
        `--throttle ${given.throttle}: reach is told at a part of governed speed, for instance "80 %".`,
      );
    const { NothingToReach, reachOf } = await import('../../study/reach.js');
    try {
      return await reachOf(at, {
        grades,
        laterals,
        hose: hose && { id: hose.id, modelName: hose.modelName, hose: hose.model },
        nozzle: nozzle && { id: nozzle.id, modelName: nozzle.modelName, nozzle: nozzle.model },
      });
    } catch (error) {
      if (error instanceof NothingToReach) throw new UsageFault(sentence(error.message));
      throw error;
    }
  },
  holds: ({ stagings, asLaid }) => {
    const own = stagings.find(({ staging }) => staging === asLaid) ?? stagings[0];
    return own.rows.some(({ cells }) => cells.some(({ length }) => length > 0));
  },
};
