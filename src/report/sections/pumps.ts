import type { PumpAnswer } from '../../study/answer.js';
import { type Block, type Cell, heading } from '../document.js';
import type { Figures } from '../figures.js';

type Property = [title: string, cell: (pump: PumpAnswer, figures: Figures) => Cell];

function stateCell({ state, offCurve }: PumpAnswer): Cell {
  if (state === 'shut_out') return { text: 'SHUT OUT', tone: 'bad' };
  if (state === 'stopped') return 'stopped';
  return offCurve ? { text: 'OFF ITS CURVE', tone: 'bad' } : 'running';
}

function powerText({ power, powerAvailable }: PumpAnswer, figures: Figures): string {
  const drawn = power === undefined ? 'not known' : figures.say('pumps.power', 'power', power);
  if (powerAvailable === undefined) return drawn;
  return `${drawn} of ${figures.say('pumps.power_available', 'power', powerAvailable)}`;
}

function suctionText({ npshAvailable, npshRequired }: PumpAnswer, figures: Figures): string {
  const there = figures.say('pumps.npsh_available', 'length', npshAvailable, { limit: npshRequired });
  if (npshRequired === undefined) return there;
  return `${there}, needs ${figures.say('pumps.npsh_required', 'length', npshRequired)}`;
}

const PROPERTIES: Property[] = [
  ['Model', (pump) => pump.model],
  ['State', stateCell],
  ['Flow', (pump, figures) => figures.say('pumps.flow', 'flow', pump.flow)],
  ['Share', (pump, figures) => figures.say('pumps.share', 'ratio', pump.share)],
  ['Inlet', (pump, figures) => figures.say('pumps.inlet_pressure', 'pressure', pump.inletPressure)],
  [
    'Discharge',
    (pump, figures) => figures.say('pumps.discharge_pressure', 'pressure', pump.dischargePressure),
  ],
  ['Rise', (pump, figures) => figures.say('pumps.head_rise', 'pressure', pump.headRise)],
  [
    'Speed',
    (pump, figures) =>
      pump.speed === undefined ? 'not known' : figures.say('pumps.speed', 'speed', pump.speed),
  ],
  ['Power', powerText],
  ['Suction head', suctionText],
];

/** One column a pump: there are two of them, and a builder compares them line by line. */
export function pumpsSection(pumps: PumpAnswer[], figures: Figures): Block[] {
  if (pumps.length === 0) return [];
  const names = pumps.map(({ name }) => ({ title: name, align: 'right' as const }));
  return [
    heading('At the pumps'),
    {
      kind: 'table',
      columns: [{ title: '' }, ...names],
      rows: PROPERTIES.map(([title, cell]) => [title, ...pumps.map((pump) => cell(pump, figures))]),
    },
  ];
}
