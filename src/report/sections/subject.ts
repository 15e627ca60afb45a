import type { CheckAnswer, FlowAnswer, RatingPoint, SiteConditions } from '../../study/answer.js';
import { type Block, paragraph } from '../document.js';
import type { Figures } from '../figures.js';

function siteLine(site: SiteConditions, figures: Figures): string {
  const elevation = figures.say('site.elevation', 'length', site.elevation);
  const air = figures.say('site.air_temperature', 'temperature', site.airTemperature);
  const water = figures.say('site.water_temperature', 'temperature', site.waterTemperature);
  return `${elevation} above sea level, air ${air}, water ${water}.`;
}

/** What was asked about: the layout's own title, the engine, the place. */
export function subjectSection({ title, engine, site }: CheckAnswer | FlowAnswer, figures: Figures): Block[] {
  return [
    paragraph([title, engine].filter(Boolean).join('. ').concat('.')),
    paragraph(siteLine(site, figures)),
  ];
}

function pointRow(point: RatingPoint, governing: boolean, figures: Figures): string[] {
  const lift = point.lift === undefined ? '' : figures.say('requirement.lift', 'length', point.lift);
  return [
    point.name || 'rating',
    figures.say('requirement.points.flow', 'flow', point.flow),
    `${figures.say('requirement.points.pressure', 'pressure', point.pressure)}${point.net ? ' net' : ''}`,
    lift,
    governing ? 'governs' : '',
  ];
}

/** What the typing asks, and where it is read. */
export function requirementSection({ requirement, judgedAt }: CheckAnswer, figures: Figures): Block[] {
  const { flow, pressure, points, source, edition } = requirement;
  const governs = (point: RatingPoint) => point.flow === flow && point.pressure === pressure;
  const asked = figures.say('requirement.flow', 'flow', flow);
  const at = figures.say('requirement.pressure', 'pressure', pressure);
  const net = points.find(governs)?.net ? ' net of intake' : '';
  const from = edition && !source.includes(edition) ? `${source}, ${edition}` : source;
  const blocks: Block[] = [
    paragraph(`Asked: ${asked} at ${at}${net}, read at the ${judgedAt}. Source: ${from}.`),
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
