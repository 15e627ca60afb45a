import type { GaugePoint, SiteConditions } from '../../study/answer.js';
import { type Block, heading } from '../document.js';
import type { Figures } from '../figures.js';
import { noState, standingCell } from '../standing.js';

export function pointsSection(
  { points, site }: { points: GaugePoint[]; site: SiteConditions },
  figures: Figures,
): Block[] {
  if (points.length === 0) return [];
  return [
    heading('Gauge points'),
    {
      kind: 'table',
      columns: [
        { title: 'Gauge' },
        { title: 'Pressure', align: 'right' },
        { title: 'Height', align: 'right' },
      ],
      rows: points.map((point) => [
        point.name,
        standingCell(noState(point.pressure, site, point.flow), 'points.pressure', point.pressure, figures),
        figures.say('points.elevation', 'length', point.elevation),
      ]),
    },
  ];
}
