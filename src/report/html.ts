import { CHART_STYLE } from './chart/chart-style.js';
import { chartSvg } from './chart/chart-svg.js';
import {
  type Blank,
  type Block,
  type Cell,
  type ChartFigure,
  type Column,
  cellText,
  cellTone,
  type Document,
  type Figure,
  type Group,
  type List,
  type Table,
  type Tone,
} from './document.js';
import { escaped } from './html-escape.js';
import { STYLE } from './html-style.js';
import { svgOf } from './svg.js';

function classes(...names: (string | false | undefined)[]): string {
  const given = names.filter(Boolean);
  return given.length > 0 ? ` class="${given.join(' ')}"` : '';
}

function element(tag: string, text: string, tone?: Tone): string {
  return `<${tag}${classes(tone)}>${escaped(text)}</${tag}>`;
}

function cellHtml(cell: Cell, { align }: Column, first: boolean): string {
  const attributes = classes(align === 'right' && 'right', cellTone(cell));
  const text = escaped(cellText(cell));
  return first ? `<th scope="row"${attributes}>${text}</th>` : `<td${attributes}>${text}</td>`;
}

function tableHtml({ columns, rows }: Table): string {
  const head = columns.map(
    ({ title, align }) => `<th scope="col"${classes(align === 'right' && 'right')}>${escaped(title)}</th>`,
  );
  const body = rows.map(
    (row) => `<tr>${row.map((cell, index) => cellHtml(cell, columns[index], index === 0)).join('')}</tr>`,
  );
  return [
    '<div class="wide"><table>',
    `<thead><tr>${head.join('')}</tr></thead>`,
    `<tbody>${body.join('\n')}</tbody>`,
    '</table></div>',
  ].join('\n');
}

const LIST_TAGS = { bullet: 'ul', number: 'ol', letter: 'ol' } as const;

function listHtml({ items, marks = 'bullet' }: List): string {
  const entries = items.map(({ lead, tone, lines }) => {
    const head = lead ? `<p><strong${classes(tone)}>${escaped(lead)}</strong></p>` : '';
    return `<li>${head}${lines.map((line) => element('p', line)).join('')}</li>`;
  });
  const tag = LIST_TAGS[marks];
  return `<${tag}${classes(marks === 'letter' && 'letters')}>\n${entries.join('\n')}\n</${tag}>`;
}

function blankHtml({ fields, room = 0 }: Blank): string {
  const lines = fields.map(
    ({ label, unit }) =>
      `<span class="field">${escaped(label)}: <span class="line"></span>${unit ? ` ${escaped(unit)}` : ''}</span>`,
  );
  const space = room > 0 ? `<div class="room" style="height:${room * 1.5}em"></div>\n` : '';
  return `${space}<p class="blank">${lines.join(' ')}</p>`;
}

const figureHtml = ({ words, drawing }: Figure): string =>
  `<figure>${svgOf(drawing, words)}<figcaption>${escaped(words)}</figcaption></figure>`;

const chartHtml = ({ words, chart }: ChartFigure): string =>
  `<figure>${chartSvg(chart, words)}<figcaption>${escaped(words)}</figcaption></figure>`;

const groupHtml = ({ blocks, newPage }: Group): string =>
  `<section${classes(newPage ? 'page' : 'together')}>\n${blocks.map(blockHtml).join('\n')}\n</section>`;

function blockHtml(block: Block): string {
  switch (block.kind) {
    case 'heading':
      return element(`h${block.level}`, block.text, block.tone);
    case 'paragraph':
      return element('p', block.text, block.tone);
    case 'table':
      return tableHtml(block);
    case 'list':
      return listHtml(block);
    case 'blank':
      return blankHtml(block);
    case 'figure':
      return figureHtml(block);
    case 'chart':
      return chartHtml(block);
    case 'group':
      return groupHtml(block);
  }
}

/** Whether a chart stands in a block or, for a group, anywhere within. */
const hasChart = (block: Block): boolean =>
  block.kind === 'chart' || (block.kind === 'group' && block.blocks.some(hasChart));

/** One page that stands alone: no script, nothing fetched, fit to be printed and signed. */
export function htmlOf(document: Document): string {
  return [
    '<!doctype html>',
    '<html lang="en">',
    '<head>',
    '<meta charset="utf-8">',
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    `<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">`,
    `<title>${escaped(document.title)}</title>`,
    `<style>${STYLE}${document.blocks.some(hasChart) ? CHART_STYLE : ''}</style>`,
    '</head>',
    '<body>',
    ...document.blocks.map(blockHtml),
    '</body>',
    '</html>',
    '',
  ].join('\n');
}
