import { STAGING_WORDS } from '../../assembly/staging-words.js';
import type { Dimension } from '../../quantity/dimension.js';
import { INSTRUMENTS, type Instrument } from '../../readings/trial-columns.js';
import type {
  CauseAnswer,
  RankedAnswer,
  ReadingAnswer,
  TellingAnswer,
} from '../../study/trial/trial-answer.js';
import type { Figures } from '../figures.js';
import { listed } from '../words.js';

export const dimensionOf = (instrument: Instrument): Dimension => INSTRUMENTS[instrument].dimension;

/** `tee gauge`, `meter`, `tachometer of pump a`. */
export function instrumentWords(instrument: Instrument): string {
  if (instrument === 'flow') return 'flow meter';
  const [what, pump] = instrument.split(' ');
  if (what === 'speed') return `tachometer of pump ${pump}`;
  return pump ? `${what} gauge of pump ${pump}` : `${what} gauge`;
}

export function setUpWords(
  { staging, orifice }: Pick<ReadingAnswer, 'staging' | 'orifice'>,
  figures: Figures,
): string {
  const bore = orifice === undefined ? 'shut' : figures.say('orifice', 'length', orifice, { role: 'bore' });
  return `${STAGING_WORDS[staging]}, ${bore}`;
}

export function causeWords({ kind, at, size, flow }: CauseAnswer, figures: Figures): string {
  const { dimension, value, deviation } = size;
  const about = (options = {}) => figures.say('size', dimension, Math.abs(value), options);
  const give = `+/- ${figures.say('size', dimension, 1.645 * deviation)}`;
  const more = value > 0 ? 'high' : 'low';
  switch (kind) {
    case 'pump_worn':
      return `${at} worn by ${about()} more than the layout says (${give})`;
    case 'governor_low':
      return `governor of ${at} low by ${about({ decimals: 1 })} (${give})`;
    case 'check_valve':
      return `check valve of ${at} not fully open, or its discharge blocked: ${about()} (${give}) at ${figures.say('size', 'flow', flow ?? 0)}`;
    case 'suction_blocked':
      return `${at} blocked: ${about()} (${give}) at ${figures.say('size', 'flow', flow ?? 0)}`;
    case 'orifice_worn':
      return `orifice worn: bore ${about({ decimals: 1 })} larger (${give})`;
    case 'instrument_off':
      return `${instrumentWords(at as Instrument)} out: reads ${about()} ${more} (${give})`;
  }
}

export const rankedWords = ({ causes }: RankedAnswer, figures: Figures): string =>
  causes.length === 0
    ? 'nothing wrong: as predicted'
    : listed(causes.map((cause) => causeWords(cause, figures)));

/** Chances are told no finer than anybody should believe them. */
export const chanceWords = (chance: number): string =>
  chance > 0.99 ? 'over 99 %' : chance < 0.01 ? 'under 1 %' : `${Math.round(chance * 100)} %`;

export function tellingWords(telling: TellingAnswer, figures: Figures): string {
  const { instrument, withAnother, first, second } = telling;
  const say = (value: number) => figures.say('telling', dimensionOf(instrument), value);
  const what = withAnother
    ? `the ${instrument} reading with another ${instrumentWords(instrument).replace(/ of .*/, '')}`
    : `the ${instrumentWords(instrument)}`;
  return `Read ${what}, ${setUpWords(telling, figures)}: ${say(first)} if the first is right, ${say(second)} if the second.`;
}
