import type { Measure } from '../../quantity/dimension.js';
import type { InventoryItem } from '../../study/answer.js';
import { type Block, type Cell, heading, paragraph } from '../document.js';
import type { Figures } from '../figures.js';
import { statementText } from '../sentence.js';
import { verdictCell } from '../words.js';

/** People and pieces are counted: nothing in an inventory is a percentage. */
function amount(field: string, measure: Measure, other: Measure | undefined, figures: Figures): string {
  if (measure.dimension === 'ratio') return String(measure.value);
  return figures.measure(field, measure, other ? { limit: other.value } : {});
}

function row(line: InventoryItem, figures: Figures): Cell[] {
  const { required, carried } = line;
  const asked = required
    ? `${line.atMost ? 'at most ' : ''}${amount('inventory.required', required, undefined, figures)}`
    : '';
  return [
    line.item,
    asked,
    carried ? amount('inventory.carried', carried, required, figures) : '',
    verdictCell(line.verdict),
  ];
}

export function inventorySection(inventory: InventoryItem[], figures: Figures): Block[] {
  if (inventory.length === 0) return [];
  const notes = inventory.flatMap(({ item, note }) =>
    note ? [{ lines: [`${item}: ${statementText(note, figures)}`] }] : [],
  );
  const sources = [...new Set(inventory.map(({ source }) => source))];
  const blocks: Block[] = [
    heading('Inventory, line by line'),
    {
      kind: 'table',
      columns: [
        { title: 'Item' },
        { title: 'Asked', align: 'right' },
        { title: 'Carried', align: 'right' },
        { title: 'Verdict' },
      ],
      rows: inventory.map((line) => row(line, figures)),
    },
  ];
  if (notes.length > 0) blocks.push({ kind: 'list', items: notes });
  blocks.push(paragraph(`Source: ${sources.join('; ')}.`, 'quiet'));
  return blocks;
}
