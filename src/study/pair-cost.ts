import type { Layout } from '../layout/layout.js';
import type { PairCostAnswer } from './engine-answer.js';

/** What the pair weighs, burns and costs against one larger pump; undefined where the layout has not figures for both. */
export function pairCost({ engine }: Layout): PairCostAnswer | undefined {
  const { one_larger_pump: single, pumps } = engine;
  if (single === undefined || pumps.b === undefined) return undefined;
  const [a, b] = [pumps.a.model, pumps.b.model];
  const both = (of: 'weight' | 'fuel' | 'price', one?: number, other?: number, against?: number) =>
    one === undefined || other === undefined || against === undefined
      ? []
      : [{ of, pair: one + other, single: against }];
  const rows = [
    ...both('weight', a.weight, b.weight, single.weight),
    ...both('fuel', a.power?.burn, b.power?.burn, single.burn),
    ...both('price', a.price, b.price, single.price),
  ];
  return rows.length === 0 ? undefined : { against: single.name ?? 'one larger pump', rows };
}
