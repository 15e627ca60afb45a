import type { Measure } from '../../quantity/dimension.js';
import type {
  AdvanceAnswer,
  AdvanceOption,
  AdvanceStep,
  HighestHose,
  LimitMet,
  StoreUse,
} from '../../study/answer.js';
import { type Block, heading, type ListItem, paragraph } from '../document.js';
import type { Figures } from '../figures.js';
import { impossibleText } from '../impossible.js';
import { statementText } from '../sentence.js';
import { counted, listed, STAGING_PHRASES, sentence } from '../words.js';
import { hoseLimitSection } from './flows.js';
import { stopLine } from './verdict.js';

/** Pieces are counted, all else has a unit. */
function amount(field: string, measure: Measure, figures: Figures): string {
  return measure.dimension === 'ratio' ? String(measure.value) : figures.measure(field, measure);
}

/** What stops a lay, in a sentence without its end. */
export function limitText({ code, at, state, value, limit, why }: LimitMet, figures: Figures): string {
  if (why) return `${state === 'shut' ? 'with every nozzle shut ' : ''}${impossibleText(why, figures)}`;
  const is = amount('limits.value', value, figures);
  const against =
    limit.dimension === 'ratio' ? String(limit.value) : figures.stated('limits.limit', limit, [value.value]);
  const sided =
    value.dimension === 'pressure' ? figures.measure('limits.value', value, { limit: limit.value }) : is;
  switch (code) {
    case 'cannot_be':
      return `${at} cannot be in the state that this takes`;
    case 'nozzle_below_minimum':
      return value.value < 0
        ? `no water reaches ${at}, which needs ${against}`
        : `${at} has ${sided}, and needs ${against}`;
    case 'hose_over_limit':
      return `${at} stands at ${sided} ${state === 'shut' ? 'with every nozzle shut' : 'while water flows'}, over its limit of ${against}`;
    case 'intake_below_floor':
      return `${at} has ${sided} at its intake, and ${against} is the least`;
    case 'tank_not_fed':
      return value.dimension === 'flow'
        ? `${at} runs dry: ${is} come in and ${figures.measure('limits.limit', limit)} are drawn`
        : `${at} cannot be filled: ${sided} at its inlet`;
    case 'hose_run_out':
      return `the ${at} has run out: ${is} used, ${against} carried`;
    case 'fittings_run_out':
      return `no more of ${at}: ${is} used, ${against} carried`;
    case 'water_run_out':
      return 'the tank is down to its reserve, what fills the hose and was poured on the way taken off';
  }
}

function where(step: Pick<AdvanceStep, 'section' | 'distance' | 'height'>, figures: Figures): string {
  const height = figures.say('steps.height', 'length', Math.abs(step.height));
  const way = step.height < 0 ? 'below' : 'above';
  return `section ${step.section}, ${figures.say('steps.distance', 'length', step.distance)} of hose, ${height} ${way} the pump`;
}

/** The answer in one line: how far, and what stops it. */
export function advanceHeadline(answer: AdvanceAnswer, figures: Figures): Block[] {
  const { reached, plan, steps, stop } = answer;
  const last = steps.find(({ section }) => section === reached);
  const so = STAGING_PHRASES[answer.staging];
  const text = last
    ? stop
      ? `ADVANCES TO ${where(last, figures)}, ${so}; section ${reached + 1} of ${plan.sections} stops it`
      : `GOES THROUGH: the whole plan to ${where(last, figures)}, ${so}`
    : `DOES NOT ADVANCE ${so}: the first section stops it`;
  return [
    { kind: 'heading', level: 1, text, tone: stop ? 'bad' : 'good' },
    ...(stop ? [paragraph(sentence(`Stopped because ${limitText(stop, figures)}`), 'bad')] : []),
    ...stopLine(answer.cautions),
  ];
}

/** What the plan is. */
export function planSection({ plan }: AdvanceAnswer, figures: Figures): Block[] {
  const length = figures.say('plan.section_length', 'length', plan.sectionLength);
  const each =
    plan.every === undefined
      ? 'without laterals'
      : `a lateral ${plan.every === 1 ? 'at every section' : `every ${plan.every} sections`}`;
  const pace =
    plan.pace === undefined ? '' : ` A section takes ${figures.say('plan.pace', 'time', plan.pace)}.`;
  return [
    paragraph(
      `From ${plan.outlet}: ${counted(plan.sections, 'section')} of ${length} of ${plan.trunk}, ${each}. While it advances ${statementText(plan.flowing, figures)}.${pace}`,
    ),
  ];
}

function flowRow(step: AdvanceStep, figures: Figures): string[] {
  const { farNozzle: far } = step;
  if (step.impossible)
    return [
      `${step.section} STOP`,
      figures.say('steps.distance', 'length', step.distance),
      figures.say('steps.height', 'length', step.height),
      `${step.lateralsOpen} of ${step.laterals}`,
      'cannot be',
      ...['', '', '', ''],
    ];
  return [
    `${step.section}${step.limits.length > 0 ? ' STOP' : ''}`,
    figures.say('steps.distance', 'length', step.distance),
    figures.say('steps.height', 'length', step.height),
    `${step.lateralsOpen} of ${step.laterals}`,
    figures.say('steps.total_flow', 'flow', step.totalFlow),
    figures.say('steps.pump_pressure', 'pressure', step.pumpPressure),
    standingText('steps.head_pressure', step.headPressure, figures),
    far ? standingText('steps.far_nozzle.pressure', far.pressure, figures, far.least) : 'shut',
    far ? figures.say('steps.far_nozzle.flow', 'flow', far.flow) : '',
  ];
}

/** Where no water comes, below the pressure of the air, that is what is said. */
function standingText(field: string, pressure: number, figures: Figures, limit?: number): string {
  return pressure < 0 ? 'no water' : figures.say(field, 'pressure', pressure, { limit });
}

/** The highest pressure and where: a section by its number, else the line by its name. */
function highestText({ at, pressure }: HighestHose, field: string, figures: Figures): string {
  const place =
    /^section (\d+)$/.exec(at)?.[1] ?? at.replace(/^hose \d+ of (?=lateral)| of (?!lateral).*$/, '');
  return `${figures.say(field, 'pressure', pressure)} at ${place}`;
}

function strainRow(step: AdvanceStep, sizes: readonly string[], figures: Figures): string[] {
  const { hoseFlowing, hoseShut, hose, water } = step;
  const lasts = step.impossible
    ? ''
    : water === undefined
      ? 'no tank'
      : water.lasts === null
        ? 'keeps up'
        : figures.say('steps.water.lasts', 'time', water.lasts);
  return [
    `${step.section}${step.limits.length > 0 ? ' STOP' : ''}`,
    step.impossible ? 'cannot be' : highestText(hoseFlowing, 'steps.hose_flowing.pressure', figures),
    highestText(hoseShut, 'steps.hose_shut.pressure', figures),
    ...sizes.map((size) =>
      leftOf(
        hose.find(({ item }) => item === size),
        figures,
      ),
    ),
    lasts,
  ];
}

function leftOf(use: StoreUse | undefined, figures: Figures): string {
  if (use === undefined) return '';
  const { used, carried } = use;
  if (carried === undefined) return `${amount('steps.hose.used', used, figures)} used`;
  const left = carried.value - used.value;
  const text = amount(
    'steps.hose.left',
    { ...used, value: Math.abs(left) < 1e-6 ? 0 : Math.abs(left) },
    figures,
  );
  return left < -1e-6 ? `${text} SHORT` : text;
}

/** Sizes of hose of which more lies on the ground at some step than at another; of the others the stores tell. */
function changing(steps: readonly AdvanceStep[]): string[] {
  const sizes = [...new Set(steps.flatMap(({ hose }) => hose.map(({ item }) => item)))];
  const usedAt = (step: AdvanceStep, size: string) =>
    step.hose.find(({ item }) => item === size)?.used.value ?? 0;
  return steps.length < 2
    ? sizes
    : sizes.filter((size) => steps.some((step) => usedAt(step, size) !== usedAt(steps[0], size)));
}

/** Two tables, as one would not fit a page: what flows, and what the hose bears and what is left. */
export function stepsSection({ steps, hoseWithoutLimit }: AdvanceAnswer, figures: Figures): Block[] {
  const right = (title: string) => ({ title, align: 'right' as const });
  const sizes = changing(steps);
  return [
    heading('Step by step: what flows'),
    {
      kind: 'table',
      columns: [
        { title: 'Section' },
        ...['Hose', 'Height', 'Open', 'Total', 'At pump', 'At head', 'Far nozzle', 'Flow'].map(right),
      ],
      rows: steps.map((step) => flowRow(step, figures)),
    },
    heading('Step by step: what the hose bears, and what is left'),
    {
      kind: 'table',
      columns: [
        { title: 'Section' },
        right('Most, flowing'),
        right('Most, all shut'),
        ...sizes.map((size) => right(`${size.replace(' hose', '')} left`)),
        right('Water lasts'),
      ],
      rows: steps.map((step) => strainRow(step, sizes, figures)),
    },
    paragraph(
      'At head: at the head of the hose, where the trunk ends. Most: the highest pressure in the hose, and at which section or line it stands.',
      'quiet',
    ),
    ...hoseLimitSection(hoseWithoutLimit),
  ];
}

/** What lies on the ground at the last step that nothing stops, and what fills it. */
export function storesSection({ steps, reached }: AdvanceAnswer, figures: Figures): Block[] {
  const step = steps.find(({ section }) => section === reached) ?? steps[0];
  const rows = [...step.hose, ...step.fittings].map(({ item, used, carried }) => [
    item,
    amount('stores.used', used, figures),
    carried === undefined ? 'not stated' : amount('stores.carried', carried, figures),
  ]);
  const { water } = step;
  return [
    heading(`On the ground at section ${step.section}`),
    {
      kind: 'table',
      columns: [{ title: 'Item' }, { title: 'Used', align: 'right' }, { title: 'Carried', align: 'right' }],
      rows,
    },
    ...(water
      ? [
          paragraph(
            `Filling this hose takes ${figures.say('water.fill', 'volume', water.fill)}${water.used > 0 ? `, ${figures.say('water.used', 'volume', water.used)} have been poured on the way` : ''}${water.brought > 0 ? `, ${figures.say('water.brought', 'volume', water.brought)} have been brought by tenders` : ''}; ${figures.say('water.left', 'volume', water.left)} are left above the reserve.`,
          ),
        ]
      : []),
  ];
}

function optionItem(option: AdvanceOption, figures: Figures): ListItem {
  const { reached, gained, distance, height, farNozzle: far, placement, stop, needs } = option;
  const lines: string[] = [];
  if (gained > 0) {
    const nozzle = far
      ? `; ${far.name} then has ${figures.say('options.far_nozzle.flow', 'flow', far.flow)} at ${figures.say('options.far_nozzle.pressure', 'pressure', far.pressure)}`
      : '';
    lines.push(`Goes to ${where({ section: reached, distance, height }, figures)}${nozzle}.`);
  }
  if (placement) {
    const { section, throttle, intake, discharge, flow } = placement;
    const before = option.code === 'portable_tank' ? 'at the inlet of the tank' : 'at its intake';
    lines.push(
      `It stands ${where({ ...placement, section }, figures)}: ${figures.say('placement.intake', 'pressure', intake, { limit: placement.floor })} ${before} (least ${figures.stated('placement.floor', { value: placement.floor, dimension: 'pressure' }, [intake])}), ${figures.say('placement.discharge', 'pressure', discharge)} out of the pump, ${figures.say('placement.flow', 'flow', flow)}, at ${figures.say('placement.throttle', 'ratio', throttle)} of governed speed.`,
    );
  }
  if (stop) lines.push(sentence(`${gained > 0 ? 'Then' : 'Stopped because'} ${limitText(stop, figures)}`));
  else if (gained > 0) lines.push('Nothing stops it within the plan.');
  if (gained > 0 && needs.length > 0) {
    const missing = needs.map(({ item, used, carried }) => {
      const short = { ...used, value: used.value - (carried?.value ?? 0) };
      return `${amount('options.needs', short, figures)} more of ${item}`;
    });
    lines.push(`Takes ${listed(missing)} than is carried.`);
  }
  if (gained > 0 && option.dryAt !== undefined)
    lines.push(`The tank is down to its reserve at section ${option.dryAt}: tenders must have come by then.`);
  const word = gained > 0 ? `+${counted(gained, 'section')}` : 'NO FURTHER';
  return {
    lead: `${word}: ${statementText(option.title, figures)}`,
    tone: gained > 0 ? 'good' : 'quiet',
    lines,
  };
}

/** What would take it further, each solved. */
export function optionsSection({ options, stop }: AdvanceAnswer, figures: Figures): Block[] {
  if (stop === undefined) return [];
  if (options.length === 0) return [heading('What would take it further'), paragraph('None was found.')];
  return [
    heading('What would take it further, each solved by itself, the farthest first'),
    { kind: 'list', items: options.map((option) => optionItem(option, figures)) },
  ];
}
