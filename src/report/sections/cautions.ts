import type { Caution } from '../../study/answer.js';
import { type Block, heading, type ListItem, paragraph } from '../document.js';
import { type Figures, sideOf } from '../figures.js';
import { cautionText } from '../sentence.js';
import { LEVEL_TONES, LEVEL_WORDS, sentence } from '../words.js';

/** The number against its limit, where the sentence itself does not give them. */
function numbers({ value, limit, message }: Caution, figures: Figures): string {
  const parts: string[] = [];
  if (value && !message.includes('{value}')) {
    parts.push(figures.measure('cautions.value', value, sideOf(value, limit)));
  }
  if (limit && !message.includes('{limit}')) {
    parts.push(`limit ${figures.stated('cautions.limit', limit)}`);
  }
  return parts.length > 0 ? ` (${parts.join(', ')})` : '';
}

function item(caution: Caution, figures: Figures): ListItem {
  const message = cautionText(caution, 'message', figures).replace(/\.$/, '');
  return {
    lead: `${LEVEL_WORDS[caution.level]} at ${caution.at}`,
    tone: LEVEL_TONES[caution.level],
    lines: [
      sentence(message + numbers(caution, figures)),
      `Do: ${sentence(cautionText(caution, 'action', figures))}`,
      `Source: ${sentence(caution.source)}`,
    ],
  };
}

export function cautionsSection(cautions: Caution[], figures: Figures): Block[] {
  if (cautions.length === 0)
    return [heading('Cautions'), paragraph('None found by the rules that this program has.')];
  return [
    heading('Cautions, most dangerous first'),
    { kind: 'list', items: cautions.map((caution) => item(caution, figures)) },
  ];
}

/** One line each of what must not be run, for a report that is asked to be brief. */
export function briefStops(cautions: Caution[], figures: Figures): Block[] {
  const stops = cautions.filter((caution) => caution.level === 'stop');
  if (stops.length === 0) return [];
  const items = stops.map((caution) => ({
    ...item(caution, figures),
    lines: item(caution, figures).lines.slice(0, 1),
  }));
  return [{ kind: 'list', items }];
}
