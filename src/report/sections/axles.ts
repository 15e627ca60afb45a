import type { AxleCase, AxlesAnswer, PairCostAnswer } from '../../study/engine-answer.js';
import { type Block, type Cell, heading, paragraph } from '../document.js';
import type { Figures } from '../figures.js';
import { statementText } from '../sentence.js';
import { listed, sentence } from '../words.js';

function loadCell(load: number | undefined, rating: number | undefined, figures: Figures): Cell {
  if (load === undefined) return 'not known';
  const shown = figures.say('axles.load', 'mass', load, { limit: rating });
  return rating !== undefined && load > rating ? { text: `${shown} OVER`, tone: 'bad' } : shown;
}

function sideText({ leftOfMiddle }: AxleCase, figures: Figures): string {
  if (leftOfMiddle === undefined) return 'not stated';
  const away = figures.say('axles.left_of_middle', 'length', Math.abs(leftOfMiddle), { role: 'bore' });
  return `${away} ${leftOfMiddle < 0 ? 'right' : 'left'}`;
}

const LEVELS: Record<string, string> = { 1: 'full', 0.5: 'half', 0: 'empty' };

/** What a layout counts without a key for its place. */
const WITHOUT_PLACE = ['hose', 'crew'];

/** Loads of the axles with tank and crew as they may be. */
export function axlesSection(axles: AxlesAnswer | undefined, figures: Figures): Block[] {
  if (axles === undefined) return [];
  const { cases, ratings, unplaced, leftOut, wheelbaseStated, rules } = axles;
  const missing = [
    ...(wheelbaseStated ? [] : ['the wheelbase']),
    ...(unplaced.length > 0 ? [`the place of ${listed(unplaced)}`] : []),
  ];
  const rating = (name: 'front' | 'rear' | 'gross'): string => {
    const value = ratings[name];
    return value === undefined ? 'not stated' : figures.stated('axles.rating', { value, dimension: 'mass' });
  };
  const load = (which: 'front' | 'rear' | 'gross', title: string) => ({
    title,
    cell: (one: AxleCase) => loadCell(one[which], ratings[which], figures),
    rated: which,
    known: cases.some((one) => one[which] !== undefined),
  });
  const balance = {
    title: 'Balance',
    cell: (one: AxleCase) => sideText(one, figures),
    rated: undefined,
    known: cases.some(({ leftOfMiddle }) => leftOfMiddle !== undefined),
  };
  const shown = [load('front', 'Front'), load('rear', 'Rear'), load('gross', 'In all'), balance].filter(
    ({ known }) => known,
  );
  const blocks: Block[] = [
    heading('Weight and axles'),
    {
      kind: 'table',
      columns: [
        { title: 'Tank' },
        { title: 'Crew' },
        ...shown.map(({ title }) => ({ title, align: 'right' as const })),
      ],
      rows: [
        ...cases.map((one): Cell[] => [
          LEVELS[one.tank],
          one.crew ? 'aboard' : 'none',
          ...shown.map(({ cell }) => cell(one)),
        ]),
        ['rating', '', ...shown.map(({ rated }) => (rated ? rating(rated) : ''))],
      ],
    },
  ];
  if (missing.length > 0) {
    const nowhere = unplaced.filter((name) => WITHOUT_PLACE.includes(name));
    const way =
      nowhere.length > 0
        ? ` Give ${listed(nowhere)} a place by a weight of that name with behind_front_axle.`
        : '';
    blocks.push(paragraph(`The axle loads cannot be told without ${listed(missing)}.${way}`));
  }
  if (leftOut.length > 0)
    blocks.push(
      paragraph(`Nothing states the weight of ${leftOut.join('; ')}: the truck weighs more than this.`),
    );
  const basis = rules.map(
    (rule) => `${sentence(statementText(rule, figures))} (${rule.source ?? 'no source'})`,
  );
  blocks.push(
    paragraph(`${basis.join(' ')} A certified ticket for each axle, fully loaded, decides.`, 'quiet'),
  );
  return blocks;
}

/** What the pair weighs, burns and costs against one larger pump. */
export function pairCostSection(cost: PairCostAnswer | undefined, figures: Figures): Block[] {
  if (cost === undefined) return [];
  const amount = (of: PairCostAnswer['rows'][number]['of'], value: number, signed = false): string => {
    if (of === 'price') return `${signed && value > 0 ? '+' : ''}${Math.round(value)}`;
    if (of === 'weight') return figures.say('pair_cost.weight', 'mass', value, { signed });
    return figures.say('pair_cost.fuel', 'flow', value, { role: 'burn', signed });
  };
  return [
    heading('The pair against one larger pump'),
    {
      kind: 'table',
      columns: [
        { title: '' },
        { title: 'Pair', align: 'right' },
        { title: cost.against, align: 'right' },
        { title: 'The pair costs', align: 'right' },
      ],
      rows: cost.rows.map(({ of, pair, single }) => [
        of === 'fuel' ? 'fuel at full power' : of,
        amount(of, pair),
        amount(of, single),
        amount(of, pair - single, true),
      ]),
    },
  ];
}
