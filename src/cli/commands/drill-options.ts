import { type Command, InvalidArgumentError, Option } from 'commander';
import type { UnitSystem } from '../../quantity/format.js';
import type { GivenOptions } from '../options.js';
import { UsageFault } from '../usage-fault.js';

/** The options of `drill` and its own commands, as commander hands them over; nothing is set that was not said. */
export interface GivenDrillOptions extends GivenOptions {
  topic?: string[];
  mix?: boolean;
  level?: number;
  count?: number;
  seed?: number;
  rules?: string;
  choices?: number;
  layout?: string;
  key?: boolean;
  keyOut?: string;
  formOut?: string;
  blueprint?: string;
  versions?: string[];
  reference?: boolean;
  keyForm?: 'short' | 'full';
  giftOut?: string;
  decisions?: string;
  keyFile?: string;
  undecidedOut?: string;

  listTopics?: boolean;
  ask?: boolean;
  sheet?: string;
  pass?: number;
}

/** All that decides what stands on a sheet. */
export interface SheetOptions {
  /** None for a balanced mix of all. */
  topics: string[];
  level: number;
  count: number;
  seed: number;
  rules: string;
  units: UnitSystem;
  /** 0 for open answers. */
  choices: number;
  /** What the sheet covers, on one line; in place of topics and count. */
  blueprint?: string;
  /** A letter: which of several exams alike. */
  version?: string;
  /** File of the trainer's own engine and lay. */
  layout?: string;
}

const USUAL = { level: 2, count: 10, rules: 'wildland', choices: 0 } as const;
const MOST_PROBLEMS = 500;
const MOST_CHOICES = 4;
const HIGHEST_SEED = 4_294_967_295;

function wholeBetween(least: number, most: number) {
  return (text: string): number => {
    const value = Number(text);
    if (!/^\d+$/.test(text) || value < least || value > most) {
      throw new InvalidArgumentError(`A whole number from ${least} to ${most} is wanted.`);
    }
    return value;
  };
}

function choicesFrom(text: string): number {
  const value = wholeBetween(0, MOST_CHOICES)(text);
  if (value === 1) throw new InvalidArgumentError('One choice is none: take 2 to 4, or 0 for open answers.');
  return value;
}

const listFrom = (text: string, before: string[] = []): string[] => [
  ...before,
  ...text
    .split(',')
    .map((topic) => topic.trim())
    .filter(Boolean),
];

function versionsFrom(text: string): string[] {
  const letters = text.split(',').map((letter) => letter.trim().toUpperCase());
  if (letters.some((letter) => !/^[A-Z]$/.test(letter)) || new Set(letters).size !== letters.length)
    throw new InvalidArgumentError('Letters with commas are wanted, each once: A,B.');
  return letters;
}

/** What decides a sheet; understood before and after `mark`, so that it can be repeated there. */
export function addDrillOptions(command: Command): Command {
  return command
    .option('--topic <topic>', 'a topic, or several with commas; see --list-topics', listFrom)
    .option('--mix', 'a balanced exam of all topics (the default without --topic)')
    .option(
      '--level <level>',
      `1 (one step) to 5 (many, with traps) (default: ${USUAL.level})`,
      wholeBetween(1, 5),
    )
    .option('--count <count>', `how many problems (default: ${USUAL.count})`, wholeBetween(1, MOST_PROBLEMS))
    .option(
      '--seed <seed>',
      'the same seed gives the same sheet (default: a new one)',
      wholeBetween(0, HIGHEST_SEED),
    )
    .option(
      '--rules <rules>',
      `the rule set that the class uses: wildland, structural, engineering; condensed-q, drop-ten, tenths, finger, old-square; or a YAML file of your own (default: ${USUAL.rules})`,
    )
    .option('--choices <number>', 'multiple choice with so many choices, 2 to 4', choicesFrom)
    .option(
      '--blueprint <plan>',
      'what the exam covers: a file, or text as draft:2,wye-equal:3@4 (topic, count, level)',
    )
    .option(
      '--versions <letters>',
      'exams alike with other figures and orders, as A,B; each file gets its letter',
      versionsFrom,
    )
    .option('--layout <file>', 'make the problems out of your own engine and lay');
}

export const sheetOption = () =>
  new Option('--sheet <code>', 'the code at the top of the sheet that was handed out');

export const passOption = () =>
  new Option('--pass <percent>', 'exit status 1 unless every student has so many right').argParser(
    wholeBetween(0, 100),
  );

/** What was said, with the usual for what was not. */
export function sheetOptions(given: GivenDrillOptions, seed: number): SheetOptions {
  if (given.mix && given.topic) {
    throw new UsageFault('--mix draws from all topics and --topic from some: give one of them');
  }
  if (given.blueprint !== undefined && (given.mix || given.topic || given.count !== undefined)) {
    throw new UsageFault('--blueprint says which topics and how many: leave --mix, --topic and --count out');
  }
  const { level, count, rules, choices } = { ...USUAL, ...defined(given) };
  return {
    topics: given.topic ?? [],
    level,
    count,
    seed: given.seed ?? seed,
    rules,
    units: given.units,
    choices,
    ...(given.blueprint !== undefined && { blueprint: given.blueprint }),
    ...(given.versions !== undefined && { version: given.versions[0] }),
    ...(given.layout !== undefined && { layout: given.layout }),
  };
}

function defined(given: GivenDrillOptions): Partial<GivenDrillOptions> {
  return Object.fromEntries(Object.entries(given).filter(([, value]) => value !== undefined));
}
