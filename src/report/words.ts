import type { Caution, InventoryItem, Verdict } from '../study/answer.js';
import type { Cell, Tone } from './document.js';

export { STAGING_PHRASES, STAGING_WORDS } from '../assembly/staging-words.js';

export const VERDICT_WORDS: Record<InventoryItem['verdict'], string> = {
  meets: 'MEETS',
  falls_short: 'FALLS SHORT',
  not_stated: 'not stated',
  not_checked: 'not checked',
};

const VERDICT_TONES: Record<InventoryItem['verdict'], Tone> = {
  meets: 'good',
  falls_short: 'bad',
  not_stated: 'care',
  not_checked: 'care',
};

export const verdictTone = (verdict: Verdict): Tone => VERDICT_TONES[verdict];

export const verdictCell = (verdict: InventoryItem['verdict']): Cell => ({
  text: VERDICT_WORDS[verdict],
  tone: VERDICT_TONES[verdict],
});

export const LEVEL_WORDS: Record<Caution['level'], string> = { stop: 'STOP', warn: 'WARN', note: 'NOTE' };

export const LEVEL_TONES: Record<Caution['level'], Tone> = { stop: 'bad', warn: 'care', note: 'quiet' };

/** `tank`, `tank and crew`, `tank, crew and hose`. */
export function listed(words: string[]): string {
  if (words.length < 2) return words.join('');
  return `${words.slice(0, -1).join(', ')} and ${words[words.length - 1]}`;
}

export const counted = (count: number, one: string, many = `${one}s`): string =>
  `${count} ${count === 1 ? one : many}`;

/** The last line of every report. */
export const DEFERRAL = "The agency, the makers' limits and a proper acceptance test decide, not this.";

/** Ends as a sentence does, whatever its writer left off. */
export const sentence = (text: string): string => (/[.!?]$/.test(text) ? text : `${text}.`);

/** A remark made into a sentence of its own. */
export const asSentence = (text: string): string => sentence(text.charAt(0).toUpperCase() + text.slice(1));
