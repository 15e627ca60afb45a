import type { Measure } from '../../quantity/dimension.js';
import type { InventoryItem } from '../../study/answer.js';
import { type Block, type Cell, heading, paragraph } from '../document.js';
import { type Figures, sideOf } from '../figures.js';
import { statementText } from '../sentence.js';
import { sentence, verdictCell } from '../words.js';

/** People and pieces are counted: nothing in an inventory is a percentage. */
const counts = (measure: Measure): boolean => measure.dimension === 'ratio';

function askedText({ required, carried, atMost, over }: InventoryItem, figures: Figures): string {
  if (!required) return '';
  const amount = counts(required)
    ? String(required.value)
    : figures.stated('inventory.required', required, [carried?.value]);
  if (over) return `over ${amount}`;
  return atMost ? `at most ${amount}` : amount;
}

function carriedText({ required, carried, leftOut = [] }: InventoryItem, figures: Figures): string {
  if (!carried) return '';
  if (counts(carried)) return String(carried.value);
  const shown = figures.measure('inventory.carried', carried, sideOf(carried, required));
  return leftOut.length > 0 ? `at least ${shown}` : shown;
}

function row(line: InventoryItem, figures: Figures): Cell[] {
  return [line.item, askedText(line, figures), carriedText(line, figures), verdictCell(line.verdict)];
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
  blocks.push(paragraph(`Source: ${sentence(sources.join('; '))}`, 'quiet'));
  return blocks;
}
