import type { Layout } from '../layout/layout.js';
import { nearest } from '../quantity/nearest.js';
import type { Planned } from './blueprint.js';
import { PLACES, placeOf } from './choices.js';
import { type Setting, settingOf, type Topic } from './draft.js';
import { DrillFault } from './drill-fault.js';
import { makeProblem } from './make-problem.js';
import { ownTopics } from './own/own-topics.js';
import type { DrillUnits, Level, Problem } from './problem.js';
import { LEVELS } from './problem.js';
import { Draw, hash } from './random.js';
import type { RuleSet } from './rules/rule-set.js';
import { TOPICS } from './topics/topics.js';
import { VERSION } from './version.js';

export interface SheetRequest {
  /** Topics to draw from, in turn; none means all of them in a balanced mix. */
  readonly topics: readonly string[];
  readonly level: Level;
  readonly count: number;
  readonly seed: number;
  readonly rules: RuleSet;
  readonly units: DrillUnits;
  /** How many choices each problem offers; 0 for open answers. */
  readonly choices: number;
  /** What the sheet covers, in place of topics and a count. */
  readonly blueprint?: readonly Planned[];
  /** One of several exams alike: the same topics and levels, other figures and order. */
  readonly version?: string;
  /** The trainer's own engine and lay: problems are made out of it instead of drawn. */
  readonly layout?: Layout;
}

export interface Sheet {
  readonly seed: number;
  /** Which of several exams alike. */
  readonly exam?: string;
  readonly level: Level;
  readonly units: DrillUnits;
  readonly rules: { readonly name: string; readonly title: string; readonly source: string };
  readonly version: string;
  readonly problems: readonly Problem[];
}

export const MOST_PROBLEMS = 500;
export const MOST_CHOICES = 4;
/** Draws for one problem before it is given up; a sound topic needs a few. */
const MOST_DRAWS = 400;
const MOST_DRAWS_OF_A_LAY = 60;

/**
 * Problems for one sheet: same request, same version, same sheet on any machine. No two problems of a sheet ask the
 * same thing.
 *
 * Errors: DrillFault where a topic, a level or a count is not to be had; its message says what is.
 */
export function makeSheet(request: SheetRequest): Sheet {
  checkRequest(request);
  const { level, seed, rules, units, choices, version } = request;
  const order = itemsOf(request);
  const topics = request.blueprint ? [] : topicsFor(request);
  const drawn = version === undefined ? `${seed}` : `${seed} ${version}`;
  const asked = new Set<string>();
  const spent = new Set<Topic>();
  const places = new Map<Topic, number>();
  const make = ({ topic, level: own }: Item, index: number): Problem | undefined => {
    const turn = places.get(topic) ?? 0;
    places.set(topic, turn + 1);
    const place = dealt(`${drawn} ${topic.id}`, turn);
    // A lay whose limits refuse so many draws will hardly bear another, and each of them solves a network.
    const most = topic.id.startsWith('own-') ? MOST_DRAWS_OF_A_LAY : MOST_DRAWS;
    for (let attempt = 0, tries = 0; attempt < most && tries < MOST_DRAWS * PLACES * 2; tries++) {
      const draw = hash(`${drawn} ${index} ${tries} ${topic.id}`).toString(36);
      const id = idOf(topic, { level: own, rules, units }, draw);
      if (placeOf(id) !== place) continue;
      attempt++;
      const made = problemOf(topic, id, rules, units, own, { number: index + 1, seed, choices });
      if (typeof made === 'string') continue;
      const key = sameness(made);
      if (asked.has(key)) continue;
      asked.add(key);
      return made;
    }
    return undefined;
  };
  const problems = order.map((item, index) => {
    const { topic } = item;
    // In a mix another topic stands in for one that has no more to ask.
    const others = request.topics.length === 0 ? topics.map((one) => ({ topic: one, level })) : [];
    for (const one of [item, ...others]) {
      if (spent.has(one.topic)) continue;
      const made = make(one, index);
      if (made !== undefined) return made;
      spent.add(one.topic);
    }
    throw new DrillFault(
      `topic ${topic.id} has no more than ${index} different problems at level ${item.level} under the rules ${rules.name}; ask for fewer, or for more topics`,
    );
  });
  const { name, title, source } = rules;
  return {
    seed,
    ...(version === undefined ? {} : { exam: version }),
    level,
    units,
    rules: { name, title, source },
    version: VERSION,
    problems,
  };
}

/** Every topic, easy to hard; those of a layout, where one is given. */
export function topicList(
  layout?: Layout,
): readonly { readonly id: string; readonly title: string; readonly levels: readonly Level[] }[] {
  return topicsOf(layout).map(({ id, title, levels }) => ({ id, title, levels }));
}

/** Why a topic is not to be had under a rule set; undefined where it is. */
export function topicLacks(
  topicId: string,
  rules: RuleSet,
  units: DrillUnits,
  layout?: Layout,
): string | undefined {
  const setting = settingOf(rules, units, 1, new Draw(''));
  if (setting === undefined) return noUnits(rules, units);
  return find(topicId, layout).lacks?.(setting);
}

/**
 * The problem that an id names, made again. `number` and `seed` are as given.
 *
 * Errors: DrillFault where the id is none, or of another rule set.
 */
export function problemById(
  id: string,
  rules: RuleSet,
  choices = 0,
  place: { readonly number: number; readonly seed: number } = { number: 1, seed: 0 },
  layout?: Layout,
): Problem {
  const [topicId, levelText, name, units, draw] = id.split('.');
  const level = Number(levelText) as Level;
  if (draw === undefined || (units !== 'us' && units !== 'si') || !LEVELS.includes(level))
    throw new DrillFault(`${id} is no problem's id`);
  if (name !== rules.name) throw new DrillFault(`${id} is a problem of the rules ${name}, not ${rules.name}`);
  const made = problemOf(find(topicId, layout), id, rules, units, level, { ...place, choices });
  if (typeof made === 'string') throw new DrillFault(`${id} is no problem's id: ${made}`);
  return made;
}

function checkRequest({ level, count, seed, choices, rules, units }: SheetRequest): void {
  if (!LEVELS.includes(level)) throw new DrillFault(`level ${level}: there are levels 1 to 5`);
  if (!Number.isInteger(count) || count < 1 || count > MOST_PROBLEMS)
    throw new DrillFault(`count ${count}: a sheet has 1 to ${MOST_PROBLEMS} problems`);
  if (!Number.isSafeInteger(seed) || seed < 0)
    throw new DrillFault(`seed ${seed}: a seed is a whole number, 0 or more`);
  if (choices !== 0 && !(Number.isInteger(choices) && choices >= 2 && choices <= MOST_CHOICES))
    throw new DrillFault(`choices ${choices}: 2 to ${MOST_CHOICES}, or 0 for open answers`);
  if (rules[units] === undefined) throw new DrillFault(noUnits(rules, units));
}

function noUnits(rules: RuleSet, units: DrillUnits): string {
  const has = (['us', 'si'] as const).filter((each) => rules[each] !== undefined).join(' and ');
  return `the rules ${rules.name} are not stated in ${units} units, only in ${has}`;
}

/** A layout's own topics in place of the drawn ones. */
function topicsOf(layout: Layout | undefined): readonly Topic[] {
  return layout === undefined ? TOPICS : ownTopics(layout);
}

function unknownTopic(id: string, ids: readonly string[]): string {
  const meant = nearest(id, ids);
  return meant
    ? `no topic is called ${id}: did you mean ${meant}?`
    : `no topic is called ${id}; there are ${ids.join(', ')}`;
}

function find(id: string, layout?: Layout): Topic {
  const topics = topicsOf(layout);
  const found = topics.find((topic) => topic.id === id);
  if (found === undefined)
    throw new DrillFault(
      unknownTopic(
        id,
        topics.map((topic) => topic.id),
      ),
    );
  return found;
}

function topicsFor({ topics, rules, units, level, layout }: SheetRequest): Topic[] {
  const known = topicsOf(layout);
  const setting = settingOf(rules, units, level, new Draw('')) as Setting;
  if (topics.length === 0) {
    const fit = known.filter(
      (topic) => topic.lacks?.(setting) === undefined && levelsUnder(topic, setting).includes(level),
    );
    if (fit.length === 0)
      throw new DrillFault(
        `no topic is to be had: ${known.map((topic) => `${topic.id}: ${topic.lacks?.(setting)}`).join('; ')}`,
      );
    return fit;
  }
  return topics.map((id) => {
    const topic = find(id, layout);
    const lack = topic.lacks?.(setting);
    if (lack !== undefined) {
      const others = known.filter((other) => other.lacks?.(setting) === undefined).map((other) => other.id);
      throw new DrillFault(
        `topic ${id} is not to be had under the rules ${rules.name}: ${lack}; there are ${others.join(', ')}`,
      );
    }
    const levels = levelsUnder(topic, setting);
    if (!levels.includes(level)) {
      const most = Math.max(...levels);
      const has = most === 1 ? 'has level 1 alone' : `has levels 1 to ${most}`;
      throw new DrillFault(
        `topic ${id} ${has}: a level is a number of steps, and no problem of it takes ${level}${level === 5 ? ' or more' : ''}`,
      );
    }
    return topic;
  });
}

interface Item {
  readonly topic: Topic;
  readonly level: Level;
}

/** What is asked, in its order: by a blueprint, or each topic in turn; a version has an order of its own. */
function itemsOf(request: SheetRequest): Item[] {
  const { blueprint, level, count, seed, version } = request;
  const mixed = request.topics.length === 0 ? new Draw(`mix ${seed}`) : undefined;
  const items = blueprint
    ? blueprint.flatMap((planned) => {
        const [topic] = topicsFor({ ...request, topics: [planned.topic], level: planned.level ?? level });
        return Array.from({ length: planned.count }, () => ({ topic, level: planned.level ?? level }));
      })
    : inTurn(topicsFor(request), count, mixed).map((topic) => ({ topic, level }));
  if (items.length > MOST_PROBLEMS)
    throw new DrillFault(
      `a sheet has 1 to ${MOST_PROBLEMS} problems, and the blueprint asks ${items.length}`,
    );
  return version === undefined ? items : new Draw(`order ${seed} ${version}`).shuffled(items);
}

const levelsUnder = (topic: Topic, setting: Setting): readonly Level[] => {
  const most = topic.reach?.(setting) ?? Number.POSITIVE_INFINITY;
  return topic.levels.filter((level) => level <= most);
};

/** Levels of a topic that a rule set has. */
export function topicLevels(
  topicId: string,
  rules: RuleSet,
  units: DrillUnits,
  layout?: Layout,
): readonly Level[] {
  const setting = settingOf(rules, units, 1, new Draw(''));
  return setting === undefined ? [] : levelsUnder(find(topicId, layout), setting);
}

/** Each topic as often as any other; a mix goes round in an order of its own each time. */
function inTurn(topics: readonly Topic[], count: number, mix: Draw | undefined): Topic[] {
  const order: Topic[] = [];
  while (order.length < count) order.push(...(mix ? mix.shuffled(topics) : topics));
  return order.slice(0, count);
}

function idOf(
  topic: Topic,
  { level, rules, units }: Pick<SheetRequest, 'level' | 'rules' | 'units'>,
  draw: string,
): string {
  return [topic.id, level, rules.name, units, draw].join('.');
}

function problemOf(
  topic: Topic,
  id: string,
  rules: RuleSet,
  units: DrillUnits,
  level: Level,
  place: { number: number; seed: number; choices: number },
): Problem | string {
  const setting = settingOf(rules, units, level, new Draw(`wording of ${id}`));
  if (setting === undefined) return noUnits(rules, units);
  const facts = topic.draw(new Draw(id), setting);
  if (facts === undefined) return 'the draw came to nothing';
  const draft = topic.pose(facts, setting);
  const { number, seed, choices } = place;
  return makeProblem(topic, draft, setting, { id, number, seed, version: VERSION }, choices);
}

/** The place of the right answer in the turn of a topic: each comes once before any comes again. */
function dealt(seed: string, turn: number): number {
  const all = Array.from({ length: PLACES }, (_, place) => place);
  return new Draw(`places ${seed} ${Math.floor(turn / PLACES)}`).shuffled(all)[turn % PLACES];
}

/** What makes two problems the same: the figures and what is asked, whatever the words. */
function sameness({ topic, given, find: asked, constants }: Problem): string {
  const figures = [...given, ...constants].map(({ symbol, text }) => `${symbol}=${text}`);
  return [topic, asked.symbol, ...figures].join(' ');
}
