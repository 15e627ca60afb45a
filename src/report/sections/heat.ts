import type { UnitSystem } from '../../quantity/format.js';
import type { HeatAnswer } from '../../study/engine-answer.js';
import { type Block, type Cell, heading, paragraph } from '../document.js';
import type { Figures } from '../figures.js';

const COOLING: Record<HeatAnswer['cooling'], Cell> = {
  own: 'its own',
  behind_check: { text: 'behind its check: NO HELP when shut out', tone: 'bad' },
  shared: { text: 'shared at the manifold: NO HELP when shut out', tone: 'bad' },
  shut: { text: 'SHUT', tone: 'bad' },
  none: { text: 'none', tone: 'care' },
};

type Property = [
  title: string | Record<UnitSystem, string>,
  cell: (heat: HeatAnswer, figures: Figures) => Cell,
];

const flow = (name: string, value: number | undefined, figures: Figures): string =>
  value === undefined ? 'not known' : figures.say(name, 'flow', value);

const PROPERTIES: Property[] = [
  ['Cooling line', ({ cooling }) => COOLING[cooling]],
  [
    { us: 'Least flow, for 15 degF', si: 'Least flow, for 8.3 degC' },
    ({ leastFlow }, figures) => flow('heat.least_flow', leastFlow, figures),
  ],
  ['Least flow, rough rule', ({ roughLeastFlow }, figures) => flow('heat.rough', roughLeastFlow, figures)],
  ['Water leaves at', ({ leaving }, figures) => warmth('heat.leaving', leaving, figures)],
  ['Outlets shut: flow', ({ shutFlow }, figures) => figures.say('heat.shut_flow', 'flow', shutFlow)],
  [
    'Outlets shut: leaves at',
    ({ shutLeaving }, figures) => warmth('heat.shut_leaving', shutLeaving, figures),
  ],
  [
    'No flow: power taken',
    ({ powerAtShutoff }, figures) =>
      powerAtShutoff === undefined
        ? 'not known'
        : figures.say('heat.power_at_shutoff', 'power', powerAtShutoff),
  ],
  [
    { us: 'No flow: to 140 degF', si: 'No flow: to 60 degC' },
    ({ untilScald }, figures) => time('heat.scald', untilScald, figures),
  ],
  ['No flow: to boiling', ({ untilBoiling }, figures) => time('heat.boiling', untilBoiling, figures)],
];

function warmth(name: string, value: number | undefined, figures: Figures): string {
  return value === undefined ? 'not known' : figures.say(name, 'temperature', value);
}

function time(name: string, value: number | undefined, figures: Figures): string {
  return value === undefined ? 'not known' : `${figures.say(name, 'time', value)} or more`;
}

/** What each pump does to the temperature of its water. */
export function heatSection(heat: HeatAnswer[], figures: Figures): Block[] {
  if (heat.length === 0) return [];
  const bound = heat.some(({ basis }) => basis === 'engine_rating')
    ? ' Where the efficiency of a pump is not known, all the power of its engine is taken to heat its water.'
    : '';
  return [
    heading('Heat'),
    {
      kind: 'table',
      columns: [{ title: '' }, ...heat.map(({ name }) => ({ title: name, align: 'right' as const }))],
      rows: PROPERTIES.map(([title, cell]) => [
        typeof title === 'string' ? title : title[figures.units],
        ...heat.map((one) => cell(one, figures)),
      ]),
    },
    paragraph(
      `Times are from no flow, with no heat lost to metal or air; an engine that gives more than the power shown is quicker.${bound} Sources: energy balance; gpm = bhp / 2.95 for 15 degF and 300 gpm for each 100 hp at shutoff, general pump texts; power at no flow: common practice, no source.`,
      'quiet',
    ),
  ];
}
