import type { CatalogueAnswer, CatalogueEntry, CatalogueFigure } from '../study/catalogue-answer.js';
import { type Block, type Document, heading, type ListItem, paragraph } from './document.js';
import { counted, sentence } from './words.js';

const called = (key: string): string => key.replaceAll('_', ' ').replaceAll('.', ' ');

const figureText = ({ key, written }: CatalogueFigure): string => `${called(key)} ${written}`;

const leadOf = ({ id, scheme }: CatalogueEntry): string => (scheme === undefined ? id : `${scheme} ${id}`);

/** One row in a line or two, without its sources. */
function brief(entry: CatalogueEntry): ListItem {
  const figures = entry.figures.map(figureText).join('; ');
  return {
    lead: leadOf(entry),
    lines: [entry.name, figures].filter((text) => text !== undefined && text !== '') as string[],
  };
}

/** One row in full: figures that share a source stand before it. */
function whole(entry: CatalogueEntry): ListItem {
  const bySource = new Map<string | undefined, CatalogueFigure[]>();
  for (const figure of entry.figures)
    bySource.set(figure.source, [...(bySource.get(figure.source) ?? []), figure]);
  const lines = [...bySource].map(([source, figures]) => {
    const text = figures.map(figureText).join('; ');
    return source === undefined ? text : `${text} (source: ${source.trim()})`;
  });
  const note = entry.note === undefined ? [] : [sentence(entry.note)];
  return { lead: leadOf(entry), lines: [...(entry.name ? [entry.name] : []), ...note, ...lines] };
}

function kindsBlocks({ kinds }: CatalogueAnswer): Block[] {
  return [
    {
      kind: 'table',
      columns: [{ title: 'Kind' }, { title: 'Rows', align: 'right' }],
      rows: kinds.map(({ kind, about, count }) => [`${kind}: ${about}`, String(count)]),
    },
    paragraph(
      'pumpyoke catalogue hose lists a kind, pumpyoke catalogue hose forestry what a word finds, with sources.',
    ),
  ];
}

function entriesBlocks({ kinds, entries }: CatalogueAnswer, full: boolean): Block[] {
  return kinds.flatMap(({ kind, about }): Block[] => {
    const own = entries.filter((entry) => entry.kind === kind);
    if (own.length === 0) return [];
    return [heading(`${kind}: ${about}`), { kind: 'list', items: own.map(full ? whole : brief) }];
  });
}

/** The catalogue for people. `full` tells the sources too, as paper does and as a search does. */
export function catalogueDocument(answer: CatalogueAnswer, full = true): Document {
  const { entries, kinds } = answer;
  const title = 'What may stand in a layout';
  if (entries.length === 0)
    return { title, blocks: [{ kind: 'heading', level: 1, text: title }, ...kindsBlocks(answer)] };
  const told = full ? '' : ' A word behind the kind tells the sources of what it finds.';
  return {
    title,
    blocks: [
      { kind: 'heading', level: 1, text: `${counted(entries.length, 'row')} of the catalogue` },
      paragraph(
        `Figures stand in the units that their sources print.${told} Where a part of your own has been measured, write its figures in the layout instead of an id.`,
      ),
      ...entriesBlocks({ ...answer, kinds }, full),
    ],
  };
}
