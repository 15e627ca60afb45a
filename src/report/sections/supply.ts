import type { PortableTankAnswer, SiteConditions, SupplyAnswer } from '../../study/answer.js';
import { type Block, heading, paragraph } from '../document.js';
import type { Figures } from '../figures.js';
import { of } from '../required.js';
import { noState } from '../standing.js';
import { sentence } from '../words.js';

function intakeText({ intake, floor, flow }: SupplyAnswer, figures: Figures, site: SiteConditions): string {
  const none = noState(intake, site, flow);
  if (none === 'no_water') return 'No water is drawn up to the intake: it lies too high above the source.';
  if (none) return `The intake cannot stand so low: water boils before this flow is drawn.`;
  const stands = figures.say('supply.intake_pressure', 'pressure', intake, { limit: floor?.pressure });
  if (!floor) return `The intake stands at ${stands}.`;
  const least = figures.stated('supply.floor', of('pressure', floor.pressure), [intake]);
  const verdict = intake < floor.pressure ? 'BELOW' : 'above';
  return `The intake stands at ${stands}, ${verdict} the ${least} that is kept there. Source: ${sentence(floor.source)}`;
}

function draftText({ draft }: SupplyAnswer, figures: Figures): string[] {
  if (!draft) return [];
  const lift = figures.say('supply.draft.lift', 'length', draft.lift, { limit: draft.attainableLift });
  const attained = figures.say('supply.draft.attainable_lift', 'length', draft.attainableLift);
  const most = figures.say('supply.draft.theoretical_lift', 'length', draft.theoreticalLift);
  return [
    `Lift ${lift}. At this elevation a pump in good order attains ${attained}, two thirds of the ${most} that air pressure could lift. Source: NWCG Firefighter Math 3.5.`,
  ];
}

function hydrantText({ hydrant, floor }: SupplyAnswer, figures: Figures): string[] {
  if (!hydrant) return [];
  const still = figures.say('supply.hydrant.static', 'pressure', hydrant.static);
  const residual = figures.say('supply.hydrant.residual', 'pressure', hydrant.residual);
  const flow = figures.say('supply.hydrant.flow', 'flow', hydrant.flow);
  const test = `Flow test: ${still} still, ${residual} at ${flow}; in between by flow to the power 1.85 (NFPA 291, from memory).`;
  if (hydrant.atFloor === undefined || !floor)
    return [test, 'The test shows no fall of pressure, so that nothing tells how much the hydrant gives.'];
  const most = figures.say('supply.hydrant.at_floor', 'flow', hydrant.atFloor);
  return [
    test,
    `Drawn down to ${figures.stated('supply.floor', of('pressure', floor.pressure))} it gives ${most}.`,
  ];
}

function relayText({ relay }: SupplyAnswer, figures: Figures): string[] {
  if (!relay) return [];
  const pressure = figures.say('supply.relay.pressure', 'pressure', relay.pressure);
  const usual = figures.say('supply.relay.relief_at', 'pressure', relay.reliefAt);
  const set =
    relay.relief === undefined
      ? 'The layout gives no setting.'
      : `The layout sets it at ${figures.say('supply.relay.relief', 'pressure', relay.relief)}.`;
  return [
    `The pump before holds ${pressure} here. Set the intake relief at ${usual}, before water flows. ${set} Source: ${sentence(relay.source)}`,
  ];
}

/** Where water comes from under pressure or by lift; the engine's own tank has a section of its own. */
export function supplySection(
  { supply, site }: { supply: SupplyAnswer; site: SiteConditions },
  figures: Figures,
): Block[] {
  if (supply.kind === 'tank') return [];
  const flow = figures.say('supply.flow', 'flow', supply.flow);
  const short =
    (supply.floor && supply.intake < supply.floor.pressure) || noState(supply.intake, site, supply.flow);
  return [
    heading(`Supply: ${supply.kind}, ${flow} drawn`),
    paragraph(intakeText(supply, figures, site), short ? 'bad' : undefined),
    ...[...draftText(supply, figures), ...hydrantText(supply, figures), ...relayText(supply, figures)].map(
      (text) => paragraph(text),
    ),
  ];
}

/** Less than this is level, m3/s (0.1 gpm). */
const EVEN = 6e-6;

function tankText({ name, capacity, inflow, outflow }: PortableTankAnswer, figures: Figures): string {
  const into = figures.say('portable_tanks.inflow', 'flow', inflow);
  const out = figures.say('portable_tanks.outflow', 'flow', outflow);
  const size = figures.say('portable_tanks.capacity', 'volume', capacity);
  const gain = inflow - outflow;
  const time = figures.say(
    'portable_tanks.time',
    'time',
    Math.abs(gain) < EVEN ? 0 : capacity / Math.abs(gain),
  );
  const trend =
    Math.abs(gain) < EVEN
      ? 'It holds its level.'
      : gain > 0
        ? `It gains, and runs over ${time} after it stood empty.`
        : `It LOSES water, and a full tank is dry after ${time}.`;
  return `${name}, ${size}: ${into} run in, ${out} are drawn. ${trend}`;
}

export function portableTanksSection(tanks: PortableTankAnswer[], figures: Figures): Block[] {
  if (tanks.length === 0) return [];
  return [
    heading('Open tanks in the line'),
    ...tanks.map((tank) => {
      const dry = tank.outflow - tank.inflow > EVEN;
      return paragraph(tankText(tank, figures), dry ? 'care' : undefined);
    }),
  ];
}
