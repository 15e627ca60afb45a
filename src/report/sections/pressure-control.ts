import type { CheckAnswer, FlowAnswer, LineControl } from '../../study/answer.js';
import { type Block, heading, type ListItem, paragraph } from '../document.js';
import type { Figures } from '../figures.js';
import { STAGING_WORDS } from '../words.js';

type Control = NonNullable<CheckAnswer['pressureControl']>;

const RULE = {
  part_of_service_test: '90 % of its service test pressure, NFPA 1962 (2018)',
  service_test: 'its service test pressure',
  working: 'its working pressure',
  casing: 'its limit',
} as const;

const line = (text: string): ListItem => ({ lines: [text] });

const IDLE =
  'The relief valve stands where the discharges meet; with an outlet for each pump they do not meet, and it guards neither.';

function deviceName(device: NonNullable<LineControl['device']>, figures: Figures): string {
  const set = figures.say('pressure_control.device.set', 'pressure', device.set);
  return device.kind === 'relief'
    ? `A relief valve opens at ${set} and passes ${figures.say('pressure_control.full_flow', 'flow', device.fullFlow)} fully lifted.`
    : `Governors hold ${set} at the discharge, once they have settled.`;
}

function overText(overSetting: number, figures: Figures): string {
  const say = (value: number) => figures.say('pressure_control.over_setting', 'pressure', value);
  return overSetting > 0 ? `${say(overSetting)} over the setting` : `${say(-overSetting)} under the setting`;
}

function deviceText({ device, flowing, shut, overSetting, reliefIdle }: Control, figures: Figures): string {
  const say = (field: string, value: number) => figures.say(`pressure_control.${field}`, 'pressure', value);
  const between = `The highest pump discharge reads ${say('flowing', flowing)} at the required flow and ${say('shut', shut)} with the outlets shut`;
  if (device === undefined || overSetting === undefined)
    return `${reliefIdle ? IDLE : 'No relief valve and no governor is set.'} ${between}: a ${shut < flowing ? 'fall' : 'rise'} of ${say('rise', Math.abs(shut - flowing))}.`;
  return `${deviceName(device, figures)} ${between}, ${overText(overSetting, figures)}.`;
}

function settingText({ highest, needed }: Control, figures: Figures): string[] {
  if (highest === undefined) return [];
  const most = figures.say('pressure_control.highest', 'pressure', highest.pressure, { limit: needed });
  const text = `Set it no higher than ${most}, which ${highest.by} bears (${RULE[highest.rule]})`;
  if (needed === undefined) return [`${text}.`];
  const least = figures.say('pressure_control.needed', 'pressure', needed, { limit: highest.pressure });
  return [
    highest.pressure > needed
      ? `${text}, and above the ${least} that the required flow takes.`
      : `${text}; the required flow takes ${least}, so that no setting serves both: work that hose at a lower throttle, or carry stronger hose.`,
  ];
}

function seriesText(series: Control['series'][number], figures: Figures): string {
  const { staging, second, shut, limit, discharge, casing } = series;
  const against = (bound: number | undefined) =>
    bound === undefined
      ? 'limit not stated'
      : `limit ${figures.stated('pressure_control.series.limit', { value: bound, dimension: 'pressure' })}`;
  const inlet = figures.say('pressure_control.series.shut', 'pressure', shut, { limit });
  const out = figures.say('pressure_control.series.discharge', 'pressure', discharge, { limit: casing });
  return `${STAGING_WORDS[staging]}, shut off: the inlet and seal of ${second} stand at ${inlet} (${against(limit)}), its casing at ${out} (${against(casing)}).`;
}

function surgeText(surge: Control['surges'][number], figures: Figures): string {
  const rise = figures.say('pressure_control.surge.rise', 'pressure', surge.rise);
  const speed = figures.say('pressure_control.surge.wave_speed', 'velocity', surge.waveSpeed, {
    decimals: 0,
  });
  const velocity = figures.say('pressure_control.surge.velocity', 'velocity', surge.velocity);
  const peak = figures.say('pressure_control.surge.peak', 'pressure', surge.peak);
  const how =
    surge.closingTime === undefined
      ? 'slammed'
      : `shut in ${figures.say('pressure_control.surge.closing_time', 'time', surge.closingTime, { unit: 's', decimals: 1 })}`;
  const known = surge.stated ? 'stated' : 'the upper end of what is recalled for hose, no published figure';
  const over =
    surge.hoseLimit !== undefined && surge.peak > surge.hoseLimit.pressure
      ? `, over the ${figures.stated('pressure_control.surge.hose_limit', { value: surge.hoseLimit.pressure, dimension: 'pressure' })} that its hose bears (${surge.hoseLimit.what})`
      : '';
  return `${surge.nozzle} ${how}: ${rise} on top of what stands there, to ${peak}${over}, by Joukowsky with water at ${velocity} and a wave speed of ${speed} (${known}).`;
}

const MOST_SURGES = 3;

/** What keeps the pressure down, where to set it, and what happens when lines are shut. */
export function pressureControlSection(answer: CheckAnswer, figures: Figures): Block[] {
  const control = answer.pressureControl;
  if (control === undefined) return [];
  const { series } = control;
  return [
    heading('Pressure control'),
    {
      kind: 'list',
      items: [
        line(deviceText(control, figures)),
        ...settingText(control, figures).map(line),
        ...series.map((one) => line(seriesText(one, figures))),
        ...shutItems(control, figures),
      ],
    },
    ...(control.lineShut || control.overSetting !== undefined ? [paragraph(RULE_SOURCE, 'quiet')] : []),
  ];
}

const RULE_SOURCE =
  'Source of the rule that a line shut raises the pressure by no more than 30 psi over the setting: city fire department manual 303.004, rev. 27 May 2025, which cites NFPA 1901 (2016).';

/** What shutting a line raises, and what slamming it adds. */
function shutItems({ lineShut, surges }: LineControl, figures: Figures): ListItem[] {
  const shut = lineShut
    ? [
        `Shutting ${lineShut.nozzle} raises ${lineShut.at} by ${figures.say('pressure_control.line_shut.rise', 'pressure', lineShut.rise)}.`,
      ]
    : [];
  return [...shut, ...surges.slice(0, MOST_SURGES).map((surge) => surgeText(surge, figures))].map(line);
}

/** In a lay as it stands: what keeps the pressure down when a line is shut, and what happens all the same. */
export function lineControlSection({ lineControl }: FlowAnswer, figures: Figures): Block[] {
  const { device, overSetting, reliefIdle } = lineControl;
  const items = shutItems(lineControl, figures);
  if (items.length === 0) return [];
  const held =
    device === undefined
      ? reliefIdle
        ? IDLE
        : 'No relief valve and no governor is set.'
      : `${deviceName(device, figures)}${overSetting === undefined ? '' : ` With everything shut the highest discharge reads ${overText(overSetting, figures)}.`}`;
  return [
    heading('When a line is shut'),
    { kind: 'list', items: [line(held), ...items] },
    paragraph(RULE_SOURCE, 'quiet'),
  ];
}
