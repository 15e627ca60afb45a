import type { HandRule, NozzleShort, RequireAnswer, StagingDemand } from '../../study/answer.js';
import { type Block, type Cell, heading, paragraph } from '../document.js';
import type { Figures } from '../figures.js';
import { impossibleText } from '../impossible.js';
import { statementText } from '../sentence.js';
import { listed, STAGING_PHRASES, STAGING_WORDS, sentence } from '../words.js';
import { stopLine } from './verdict.js';

function chosen(answer: RequireAnswer): StagingDemand {
  return answer.stagings.find(({ staging }) => staging === answer.staging) as StagingDemand;
}

function pumpsText({ pumps }: StagingDemand, figures: Figures): string {
  return pumps
    .map(({ name, dischargePressure, flow }) => {
      const pressure = figures.say('stagings.pumps.discharge_pressure', 'pressure', dischargePressure);
      return `${name} at ${pressure} (${figures.say('stagings.pumps.flow', 'flow', flow)})`;
    })
    .join(', ');
}

/** A throttle that is rounded down serves nobody: to the tenth of a percent above. */
function throttleText(field: string, throttle: number, figures: Figures): string {
  const up = Math.ceil(throttle * 1000 - 1e-6) / 1000;
  return figures.say(field, 'ratio', up, up === Math.round(up * 100) / 100 ? {} : { decimals: 1 });
}

function shortText({ worst, losing, impossible }: StagingDemand, figures: Figures): string {
  if (impossible) return impossibleText(impossible, figures);
  if (worst.margin >= 0 && losing)
    return `${losing.name} loses ${figures.say('stagings.losing', 'flow', losing.by)}`;
  return nozzleShortText(worst, figures);
}

function nozzleShortText({ pressure, required, name }: NozzleShort, figures: Figures): string {
  const has = figures.say('stagings.worst.pressure', 'pressure', pressure, { limit: required });
  const wants = figures.stated('stagings.worst.required', { value: required, dimension: 'pressure' }, [
    pressure,
  ]);
  const by = figures.say('stagings.worst.margin', 'pressure', required - pressure, { limit: 0 });
  return `${name} gets ${has} of ${wants}, ${by} short`;
}

/** Whether it can be done, how, and by how much not. */
export function requireHeadline(answer: RequireAnswer, figures: Figures): Block[] {
  const own = chosen(answer);
  const one = answer.needs.length === 1;
  const nozzles = one ? 'the nozzle' : `all ${answer.needs.length} nozzles`;
  const meets = answer.verdict === 'meets';
  const throttle = throttleText('stagings.throttle', own.throttle, figures);
  const text = meets
    ? `CAN serve ${nozzles} ${STAGING_PHRASES[own.staging]} at ${throttle} throttle: ${pumpsText(own, figures)}`
    : own.impossible
      ? `CANNOT serve ${nozzles} ${STAGING_PHRASES[own.staging]}: ${shortText(own, figures)}`
      : `CANNOT serve ${nozzles}: at best ${STAGING_PHRASES[own.staging]}, at full throttle, ${shortText(own, figures)}`;
  const stops = answer.cautions.some(({ level }) => level === 'stop');
  const other =
    meets && own.staging !== answer.asLaid
      ? [
          paragraph(
            `The layout has the pumps ${STAGING_PHRASES[answer.asLaid]}: change the staging for this.`,
            'care',
          ),
        ]
      : [];
  return [
    { kind: 'heading', level: 1, text, tone: !meets ? 'bad' : stops ? 'care' : 'good' },
    ...stopLine(answer.cautions),
    ...other,
    ...takesText(answer, figures),
  ];
}

function takesText({ outlets, outletsImpossible }: RequireAnswer, figures: Figures): Block[] {
  if (outletsImpossible)
    return [
      paragraph(sentence(`What the lay takes cannot be told: ${impossibleText(outletsImpossible, figures)}`)),
    ];
  if (!outlets)
    return [
      paragraph(
        'No pressure that was tried, up to sixteen times what these pumps make, would serve every nozzle.',
      ),
    ];
  const takes = outlets.map(({ name, flow, pressure }) => {
    const wants = figures.say('outlets.pressure', 'pressure', pressure);
    return `${wants} at ${figures.say('outlets.flow', 'flow', flow)} at ${name}`;
  });
  return [paragraph(`Whatever pump makes it, the lay takes ${listed(takes)}.`)];
}

export function servableSection({ servable, needs }: RequireAnswer, figures: Figures): Block[] {
  if (!servable) return [];
  const { staging, served, leftOut, exact } = servable;
  const throttle =
    servable.throttle === 1
      ? 'full throttle'
      : `${throttleText('servable.throttle', servable.throttle, figures)} throttle`;
  const how = exact ? 'Every set of nozzles was tried.' : 'Not every set was tried: a larger one may exist.';
  if (served.length === 0)
    return [
      heading('What it can serve'),
      paragraph('Not one nozzle alone, in any staging at full throttle.', 'bad'),
    ];
  return [
    heading('What it can serve'),
    paragraph(
      `${served.length} of ${needs.length}, ${STAGING_PHRASES[staging]} at ${throttle}: open ${listed(served)}; keep ${listed(leftOut)} shut. ${how}`,
    ),
  ];
}

function verdictCell(demand: StagingDemand): Cell {
  if (demand.impossible) return { text: 'CANNOT BE', tone: 'bad' };
  if (demand.verdict === 'falls_short') return { text: 'CANNOT', tone: 'bad' };
  return demand.stops > 0 ? { text: 'CAN, STOP', tone: 'care' } : { text: 'CAN', tone: 'good' };
}

/** `124/253 psi`: one unit for all. */
function dischargesText({ pumps }: StagingDemand, figures: Figures): string {
  const said = pumps.map(({ dischargePressure }) =>
    figures.say('stagings.pumps.discharge_pressure', 'pressure', dischargePressure),
  );
  const unit = said[0]?.slice(said[0].lastIndexOf(' ')) ?? '';
  return said.map((text, i) => (i < said.length - 1 ? text.replace(unit, '') : text)).join('/');
}

function missingText({ worst, losing }: StagingDemand, figures: Figures): string {
  if (worst.margin >= 0 && losing)
    return `${figures.say('stagings.losing', 'flow', losing.by)}, ${losing.name}`;
  return `${figures.say('stagings.worst.margin', 'pressure', -worst.margin, { limit: 0 })}, ${worst.name}`;
}

function searchedRow(demand: StagingDemand, answer: RequireAnswer, figures: Figures): Cell[] {
  const { staging, throttle, verdict, highestHose, impossible } = demand;
  const name = `${STAGING_WORDS[staging]}${staging === answer.asLaid ? ' *' : ''}`;
  if (impossible) return [name, verdictCell(demand), '', '', '', `${impossible.at}, see below`];
  const margin = verdict === 'meets' ? '' : missingText(demand, figures);
  return [
    name,
    verdictCell(demand),
    throttleText('stagings.throttle', throttle, figures),
    dischargesText(demand, figures),
    highestHose ? figures.say('stagings.highest_hose', 'pressure', highestHose.pressure) : '',
    margin,
  ];
}

/** Every staging at the least throttle that serves all, or at full where none does. */
export function searchedSection(answer: RequireAnswer, figures: Figures): Block[] {
  return [
    heading('Throttle and discharge, staging by staging'),
    {
      kind: 'table',
      columns: [
        { title: 'Staging' },
        { title: 'Verdict' },
        { title: 'Throttle', align: 'right' },
        { title: 'Discharge', align: 'right' },
        { title: 'In hose', align: 'right' },
        { title: 'Short' },
      ],
      rows: answer.stagings.map((demand) => searchedRow(demand, answer, figures)),
    },
    paragraph(
      '* as laid out. Throttle is part of governed speed, the least that serves every nozzle in a state that can be; discharge pump by pump, in the order that water meets them.',
      'quiet',
    ),
    ...answer.stagings.flatMap(({ staging, impossible }) =>
      impossible
        ? [
            paragraph(
              sentence(`${STAGING_WORDS[staging]} cannot be: ${impossibleText(impossible, figures)}`),
              'bad',
            ),
          ]
        : [],
    ),
  ];
}

/** Downhill, height may bring more than the nozzle and the hose ask for. */
function totalText({ pressure }: HandRule, figures: Figures): string {
  const total = figures.say('rules.pressure', 'pressure', pressure);
  return pressure > 0 ? total : `none (${total})`;
}

function ruleRow(rule: HandRule, figures: Figures): Cell[] {
  return [
    rule.rules,
    figures.say('rules.nozzle_pressure', 'pressure', rule.nozzlePressure),
    figures.say('rules.friction', 'pressure', rule.friction),
    `${figures.say('rules.appliances', 'pressure', rule.appliances)} (${rule.applianceCount})`,
    figures.say('rules.height', 'pressure', rule.height),
    totalText(rule, figures),
    rule.nozzle,
  ];
}

/** What the notebook would have said beside what was solved; each row by one rule set, none mixed. */
export function handRulesSection(answer: RequireAnswer, figures: Figures): Block[] {
  const title = heading('What the notebook would have said, at the outlet');
  const { rules, rulesOmitted, outlets } = answer;
  if (rulesOmitted) return [title, paragraph(sentence(statementText(rulesOmitted, figures)))];
  if (rules.length === 0) return [];
  const outlet = outlets?.find(({ name }) => name === rules[0].outlet);
  const solved: Cell[][] = outlet
    ? [['solved', '', '', '', '', figures.say('outlets.pressure', 'pressure', outlet.pressure), '']]
    : [];
  return [
    title,
    {
      kind: 'table',
      columns: [
        { title: 'Rule set' },
        { title: 'Nozzle', align: 'right' },
        { title: 'Hose', align: 'right' },
        { title: 'Appliances', align: 'right' },
        { title: 'Height', align: 'right' },
        { title: 'Total', align: 'right' },
        { title: 'For' },
      ],
      rows: [...rules.map((rule) => ruleRow(rule, figures)), ...solved],
    },
    paragraph(
      'By each rule every open nozzle runs at its rating. Solved, those nearer the pump get more than they ask and pass more, so that the lay takes more pressure than the sums say.',
      'quiet',
    ),
    {
      kind: 'list',
      items: rules.map(({ stamp }) => ({
        lines: [`${statementText(stamp, figures)} [${stamp.source}].`],
      })),
    },
  ];
}

export function needsSection({ needs }: RequireAnswer, figures: Figures): Block[] {
  return [
    heading('What each nozzle is laid for'),
    {
      kind: 'table',
      columns: [
        { title: 'Nozzle' },
        { title: 'What' },
        { title: 'Pressure', align: 'right' },
        { title: 'Flow', align: 'right' },
      ],
      rows: needs.map(({ name, kind, pressure, flow }) => [
        name,
        kind,
        figures.say('needs.pressure', 'pressure', pressure),
        flow === undefined ? 'as it is given' : figures.say('needs.flow', 'flow', flow),
      ]),
    },
    paragraph(`Source: ${sentence([...new Set(needs.map(({ source }) => source))].join('; '))}`, 'quiet'),
  ];
}
