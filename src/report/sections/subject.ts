import type { Answer, CheckAnswer, RatingPoint, SiteConditions } from '../../study/answer.js';
import { type Block, paragraph } from '../document.js';
import type { Figures } from '../figures.js';
import { of, requiredFlow, requiredPressure } from '../required.js';
import { sentence } from '../words.js';

function siteLine(site: SiteConditions, figures: Figures): string {
  const elevation = figures.say('site.elevation', 'length', site.elevation);
  const air = figures.say('site.air_temperature', 'temperature', site.airTemperature);
  const water = figures.say('site.water_temperature', 'temperature', site.waterTemperature);
  return `${elevation} above sea level, air ${air}, water ${water}.`;
}

/** What was asked about: the layout's own title, the engine, the place. */
export function subjectSection({ title, engine, site }: Answer, figures: Figures): Block[] {
  return [
    paragraph([...new Set([title, engine])].filter(Boolean).join('. ').concat('.')),
    paragraph(siteLine(site, figures)),
  ];
}

function pointRow(point: RatingPoint, governing: boolean, figures: Figures): string[] {
  const lift = point.lift === undefined ? '' : figures.say('requirement.lift', 'length', point.lift);
  return [
    point.name || 'rating',
    figures.stated('requirement.points.flow', of('flow', point.flow)),
    `${figures.stated('requirement.points.pressure', of('pressure', point.pressure))}${point.net ? ' net' : ''}`,
    lift,
    governing ? 'governs' : '',
  ];
}

/** What the typing asks, and where it is read. */
export function requirementSection(answer: CheckAnswer, figures: Figures): Block[] {
  const { requirement, judgedAt } = answer;
  const { flow, pressure, points, source, edition } = requirement;
  const governs = (point: RatingPoint) => point.flow === flow && point.pressure === pressure;
  const asked = requiredFlow(answer, figures);
  const at = requiredPressure(answer, figures);
  const net = points.find(governs)?.net ? ' net of intake' : '';
  const from = edition && !source.includes(edition) ? `${source}, ${edition}` : source;
  const blocks: Block[] = [
    paragraph(`Asked: ${asked} at ${at}${net}, read at ${judgedAt}. Source: ${sentence(from)}`),
  ];
  if (points.length > 1) {
    blocks.push({
      kind: 'table',
      columns: [
        { title: 'Rating point' },
        { title: 'Flow', align: 'right' },
        { title: 'Pressure', align: 'right' },
        { title: 'Lift', align: 'right' },
        { title: '' },
      ],
      rows: points.map((point) => pointRow(point, governs(point), figures)),
    });
  }
  return blocks;
}
