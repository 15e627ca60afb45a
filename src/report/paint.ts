import { Chalk } from 'chalk';
import type { Tone } from './document.js';

/** Colours a passage, or leaves it as it is. */
export interface Paint {
  tone(tone: Tone | undefined, text: string): string;
  strong(text: string): string;
}

/** Sixteen colours, which every terminal that has colour has. */
export function paintFor(colour: boolean): Paint {
  const chalk = new Chalk({ level: colour ? 1 : 0 });
  const tones: Record<Tone, (text: string) => string> = {
    good: chalk.green,
    bad: chalk.red,
    care: chalk.yellow,
    quiet: chalk.dim,
  };
  return {
    tone: (tone, text) => (tone ? tones[tone](text) : text),
    strong: (text) => chalk.bold(text),
  };
}
