import type { LifeAnswer, ServiceDue } from '../../study/engine-answer.js';
import { type Block, heading, type ListItem } from '../document.js';
import type { Figures } from '../figures.js';
import { listed } from '../words.js';

const hours = (name: string, value: number, figures: Figures): string =>
  figures.say(name, 'time', value, { role: 'running' });

function serviceText({ service, at, left, on }: ServiceDue, figures: Figures): string {
  const due: string[] = [];
  if (at !== undefined) {
    const late = left !== undefined && left < 0;
    const rest =
      left === undefined
        ? ''
        : late
          ? `, OVERDUE by ${hours('life.services.left', -left, figures)}`
          : `, in ${hours('life.services.left', left, figures)}`;
    due.push(`at ${hours('life.services.at', at, figures)}${rest}`);
  }
  if (on !== undefined) due.push(`on ${on}`);
  return `${service} ${due.length > 0 ? due.join(' or ') : 'due: not known'}`;
}

function pumpText(pump: LifeAnswer['pumps'][number], figures: Figures): string {
  const run =
    pump.hours === undefined ? 'hours not stated' : `${hours('life.hours', pump.hours, figures)} run`;
  const worn = `${figures.say('life.wear', 'ratio', pump.wear)} of its head worn off`;
  const bears =
    pump.bears === undefined
      ? ''
      : `; alone it may wear to ${figures.say('life.bears', 'ratio', pump.bears)}`;
  const services = pump.services.map((service) => serviceText(service, figures));
  return `${pump.name}: ${[run, worn + bears, ...services].join('; ')}.`;
}

function wearText({ unworn, bothBear, short }: LifeAnswer, figures: Figures): string[] {
  const lines: string[] = [];
  if (unworn) {
    const cost =
      unworn.cost === undefined
        ? ''
        : `; wear has taken ${figures.say('life.unworn.cost', 'pressure', unworn.cost)} of it`;
    lines.push(`Unworn, ${figures.overOrShort('life.unworn.margin', 'pressure', unworn.margin)}${cost}.`);
  }
  if (short) lines.push('As the pumps are, the verdict falls short; there is no wear left to bear.');
  else if (bothBear === undefined) lines.push('No wear that is looked at turns the verdict.');
  else {
    const wear = figures.say('life.both_bear', 'ratio', bothBear);
    lines.push(`Both may wear to ${wear} of their head before the verdict falls short.`);
  }
  return lines;
}

function partsText({ sameModel, partsInCommon }: LifeAnswer): string[] {
  if (partsInCommon !== undefined) {
    return [
      partsInCommon.length > 0 ? `Parts that fit both: ${listed(partsInCommon)}.` : 'No part fits both.',
    ];
  }
  return sameModel ? ['Both are of one model: one set of parts fits either.'] : [];
}

/** The pair over its life. */
export function lifeSection(life: LifeAnswer, figures: Figures): Block[] {
  const { lead, pumps } = life;
  const lines = [
    ...pumps.map((pump) => pumpText(pump, figures)),
    ...(lead
      ? [
          `${lead.name} should lead until their hours are even: it is ${hours('life.lead', lead.behind, figures)} behind.`,
        ]
      : []),
    ...wearText(life, figures),
    ...partsText(life),
  ];
  const items: ListItem[] = lines.map((line) => ({ lines: [line.charAt(0).toUpperCase() + line.slice(1)] }));
  return [heading('Hours and wear'), { kind: 'list', items }];
}
