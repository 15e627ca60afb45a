import type { Impossibility } from '../limits/impossible.js';
import type { UnitSystem } from '../quantity/format.js';
import { type Block, paragraph } from './document.js';
import { type Figures, figuresIn, sideOf } from './figures.js';
import { statementText } from './sentence.js';
import { sentence } from './words.js';

/** Reasons that are told beside the first: a long lay may have one at every section. */
const MOST = 3;

/** Why a state cannot be, as a clause: `pump b would move more than 105 gpm, where its curve ends`. */
export function impossibleText({ at, value, limit, why }: Impossibility, figures: Figures): string {
  return statementText(
    {
      template: why,
      values: {
        at,
        value: figures.measure('impossible.value', value, sideOf(value, limit)),
        limit: figures.stated('impossible.limit', limit, [value.value]),
      },
    },
    figures,
  );
}

/** In a few words, for a cell: without the figures. */
const IN_BRIEF: Record<Impossibility['code'], string> = {
  water_parts: 'water boils at',
  hose_flat: 'hose pressed flat at',
  past_curve: 'past its curve:',
  suction_short: 'cavitates:',
};

export const impossibleBrief = ({ code, at }: Impossibility): string => `${IN_BRIEF[code]} ${at}`;

/** Of several reasons the first stands in the headline, and the others under it. */
export function impossibleLines([first, ...rest]: readonly Impossibility[], figures: Figures): Block[] {
  // Hose that is pressed flat where water boils is told of once, and without the figure, which nothing stands at.
  const others = rest.filter(({ at, code }) => at !== first?.at && code !== first?.code);
  return [
    ...others
      .slice(0, MOST)
      .map((one) => paragraph(sentence(`Nor can this be: ${impossibleText(one, figures)}`), 'bad')),
  ];
}

/** The same for programs: what it is, where, and the sentence. */
export const impossibleTree = (one: Impossibility | undefined, units: UnitSystem) =>
  one
    ? { code: one.code, at: one.at, reason: impossibleText(one, figuresIn(units)), source: one.source }
    : null;
