import type { GaugePoint, SiteConditions } from '../../study/answer.js';
import { type Block, heading, paragraph } from '../document.js';
import type { Figures } from '../figures.js';
import { noState, standingCell } from '../standing.js';

export function pointsSection(
  { points, site }: { points: GaugePoint[]; site: SiteConditions },
  figures: Figures,
): Block[] {
  if (points.length === 0) return [];
  const blocks: Block[] = [
    heading('Gauge points'),
    {
      kind: 'table',
      columns: [
        { title: 'Gauge' },
        { title: 'Pressure', align: 'right' },
        { title: 'Height', align: 'right' },
      ],
      rows: points.map((point) => [
        point.reads === 'total' ? `${point.name} *` : point.name,
        standingCell(noState(point.pressure, site, point.flow), 'points.pressure', point.pressure, figures),
        figures.say('points.elevation', 'length', point.elevation),
      ]),
    },
  ];
  if (points.some(({ reads }) => reads === 'total')) {
    blocks.push(
      paragraph(
        '* no bore is known there, and this is total pressure: a gauge reads less by the velocity head.',
        'quiet',
      ),
    );
  }
  return blocks;
}
