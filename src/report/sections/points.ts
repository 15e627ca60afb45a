import type { GaugePoint } from '../../study/answer.js';
import { type Block, heading } from '../document.js';
import type { Figures } from '../figures.js';

export function pointsSection(points: GaugePoint[], figures: Figures): Block[] {
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
        figures.say('points.pressure', 'pressure', point.pressure),
        figures.say('points.elevation', 'length', point.elevation),
      ]),
    },
  ];
}
