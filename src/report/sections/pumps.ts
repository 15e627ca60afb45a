import { STANDSTILL } from '../../assembly/standstill.js';
import type { PumpAnswer, SiteConditions, TankReturn } from '../../study/answer.js';
import { type Block, type Cell, heading, paragraph } from '../document.js';
import type { Figures } from '../figures.js';
import { NO_STATE_WORDS, noState, noStateText, standingCell } from '../standing.js';
import { listed } from '../words.js';

type Property = [title: string, cell: (pump: PumpAnswer, figures: Figures, site: SiteConditions) => Cell];

function stateCell({ state, offCurve, delivered }: PumpAnswer): Cell {
  if (delivered < -STANDSTILL) return { text: 'WATER RUNS BACK', tone: 'bad' };
  if (state === 'shut_out') return { text: 'SHUT OUT', tone: 'bad' };
  if (state === 'dead_headed') return { text: 'DEAD-HEADED', tone: 'bad' };
  if (state === 'stopped') return 'stopped';
  return offCurve ? { text: 'OFF ITS CURVE', tone: 'bad' } : 'running';
}

const HELD_BY: Record<PumpAnswer['limitedBy'], Cell> = {
  governor: 'its governor',
  power: { text: 'its POWER', tone: 'care' },
  not_known: 'not known',
};

function speedText({ speed, ofRatedSpeed }: PumpAnswer, figures: Figures): string {
  const part = figures.say('pumps.of_rated_speed', 'ratio', ofRatedSpeed);
  return speed === undefined ? `${part} of rated` : figures.say('pumps.speed', 'speed', speed);
}

/** As the intake gauge reads it, which goes below the air in a unit of its own. */
const inletState = ({ inletPressure, flow }: PumpAnswer, site: SiteConditions) =>
  noState(inletPressure, site, flow);

function vacuumText(pump: PumpAnswer, figures: Figures, site: SiteConditions): Cell {
  const { inletPressure } = pump;
  const none = inletState(pump, site);
  if (none) return { text: NO_STATE_WORDS[none], tone: 'bad' };
  return inletPressure < 0
    ? figures.say('pumps.inlet_vacuum', 'pressure', -inletPressure, { role: 'vacuum' })
    : 'none';
}

function coolingText({ cooling }: PumpAnswer, figures: Figures): string {
  return cooling === undefined ? 'none of its own' : figures.say('pumps.cooling', 'flow', cooling);
}

function powerText({ power, powerAvailable }: PumpAnswer, figures: Figures): string {
  const drawn = power === undefined ? 'not known' : figures.say('pumps.power', 'power', power);
  if (powerAvailable === undefined) return drawn;
  return `${drawn} of ${figures.say('pumps.power_available', 'power', powerAvailable)}`;
}

function suctionText({ npshAvailable, npshRequired }: PumpAnswer, figures: Figures): string {
  const there =
    npshAvailable <= 0
      ? 'none'
      : figures.say('pumps.npsh_available', 'length', npshAvailable, { limit: npshRequired });
  if (npshRequired === undefined) return there;
  return `${there}, needs ${figures.say('pumps.npsh_required', 'length', npshRequired)}`;
}

const PROPERTIES: Property[] = [
  ['Model', (pump) => pump.model],
  ['State', stateCell],
  ['Flow', (pump, figures) => figures.say('pumps.flow', 'flow', pump.flow)],
  ['To the discharge', (pump, figures) => figures.say('pumps.delivered', 'flow', pump.delivered)],
  ['Cooling line', coolingText],
  ['Share', (pump, figures) => figures.say('pumps.share', 'ratio', pump.share)],
  [
    'Inlet',
    (pump, figures, site) =>
      standingCell(inletState(pump, site), 'pumps.inlet_pressure', pump.inletPressure, figures),
  ],
  ['Inlet vacuum', vacuumText],
  [
    'Discharge',
    (pump, figures, site) =>
      standingCell(
        noState(pump.dischargePressure, site, pump.flow),
        'pumps.discharge_pressure',
        pump.dischargePressure,
        figures,
      ),
  ],
  ['Rise', (pump, figures) => figures.say('pumps.head_rise', 'pressure', pump.headRise)],
  ['Speed', speedText],
  ['Held by', ({ limitedBy }) => HELD_BY[limitedBy]],
  ['Power', powerText],
  ['Suction head', suctionText],
];

function returnsText(returns: readonly TankReturn[], figures: Figures): Block[] {
  if (returns.length === 0) return [];
  const each = returns.map(({ name, flow }) => `${name} ${figures.say('pumps.returns', 'flow', flow)}`);
  return [paragraph(`Back to the tank: ${listed(each)}.`)];
}

/** One column a pump: there are two of them, and a builder compares them line by line. */
export function pumpsSection(
  { pumps, returns, site }: { pumps: PumpAnswer[]; returns: TankReturn[]; site: SiteConditions },
  figures: Figures,
  title = 'At the pumps',
): Block[] {
  if (pumps.length === 0) return [];
  const names = pumps.map(({ name }) => ({ title: name, align: 'right' as const }));
  return [
    heading(title),
    {
      kind: 'table',
      columns: [{ title: '' }, ...names],
      rows: PROPERTIES.map(([title, cell]) => [title, ...pumps.map((pump) => cell(pump, figures, site))]),
    },
    ...returnsText(returns, figures),
    ...noStateText(
      pumps.map((pump) => inletState(pump, site)),
      site,
      figures,
    ).map((text) => paragraph(text, 'bad')),
  ];
}
