import { literal } from '../caution/caution.js';
import type { Layout, TypingAsked } from '../layout/layout.js';
import type { Measure } from '../quantity/dimension.js';
import { nominalSize } from '../quantity/nominal-size.js';
import type { InventoryItem, Statement } from './answer.js';
import { type Mass, weigh } from './masses.js';
import { typingSource } from './requirement.js';

/** Nominal sizes are told apart to this, m. */
const SAME_SIZE = 1e-4;
/** Part of what is asked that rounding makes: a hose of 300.0 ft read through metres must not fall short of 300 ft. */
const SLACK = 1e-9;

/** Holds what the engine carries against its typing, line by line, and its loaded weight against its ratings. */
export function takeInventory(layout: Layout, typing: TypingAsked): InventoryItem[] {
  const { engine } = layout;
  const { requirement } = typing;
  const items: InventoryItem[] = [];
  const atLeast = (item: string, key: string, required: Measure | undefined, carried: number | undefined) => {
    if (required) items.push(compared(item, required, carried, false, typingSource(typing, key)));
  };
  atLeast('tank', 'tank', measure(requirement.tank, 'volume'), engine.tank?.capacity);
  for (const { nominal, length } of requirement.hose ?? []) {
    atLeast(`${nominalSize(nominal)} hose`, 'hose', measure(length, 'length'), hoseCarried(layout, nominal));
  }
  atLeast('crew', 'crew', measure(requirement.crew, 'ratio'), engine.crew);
  const weight = loadedWeight(layout);
  if (requirement.gross_weight_maximum !== undefined) {
    const most: Measure = { value: requirement.gross_weight_maximum, dimension: 'mass' };
    const source = typingSource(typing, 'gross_weight_maximum');
    items.push(compared('gross weight rating', most, engine.gross_weight_rating, true, source));
  }
  items.push(...weightClass(typing, engine.gross_weight_rating));
  if (engine.gross_weight_rating !== undefined || weight) {
    const rating = measure(engine.gross_weight_rating, 'mass');
    const line = compared('loaded weight', rating, weight?.total, true, 'sum of the weights in the layout');
    const leftOut = weight?.leftOut ?? [];
    // With parts of the sum missing the truck may be over its rating; under it, it is not known to be.
    const known = leftOut.length === 0 || line.verdict === 'falls_short';
    items.push({
      ...line,
      ...(!known && { verdict: 'not_stated' as const }),
      ...(leftOut.length > 0 && { leftOut }),
      note: weight?.note,
    });
  }
  for (const { item, requirement: text, source } of requirement.not_checked ?? []) {
    items.push({
      item,
      atMost: false,
      verdict: 'not_checked',
      note: { template: literal(text) },
      source: source ?? typingSource(typing),
    });
  }
  return items;
}

/** The gross weight rating against the foot of a class that has one, which is reached or has to be passed. */
function weightClass(typing: TypingAsked, rating: number | undefined): InventoryItem[] {
  const { gross_weight_minimum: least, gross_weight_above: above } = typing.requirement;
  const items: InventoryItem[] = [];
  const item = 'gross weight rating, least';
  if (least !== undefined) {
    const source = typingSource(typing, 'gross_weight_minimum');
    items.push(compared(item, { value: least, dimension: 'mass' }, rating, false, source));
  }
  if (above !== undefined) {
    const source = typingSource(typing, 'gross_weight_above');
    const line = compared(item, { value: above, dimension: 'mass' }, rating, false, source);
    const passed = rating !== undefined && rating > above * (1 + SLACK);
    items.push({ ...line, over: true, ...(rating !== undefined && !passed && { verdict: 'falls_short' }) });
  }
  return items;
}

function measure(value: number | undefined, dimension: Measure['dimension']): Measure | undefined {
  return value === undefined ? undefined : { value, dimension };
}

function compared(
  item: string,
  required: Measure | undefined,
  carried: number | undefined,
  atMost: boolean,
  source: string,
): InventoryItem {
  if (required === undefined || carried === undefined) {
    const known =
      required ?? (carried === undefined ? undefined : { value: carried, dimension: 'mass' as const });
    return {
      item,
      required,
      carried: carried === undefined ? undefined : known,
      atMost,
      verdict: 'not_stated',
      source,
    };
  }
  const slack = SLACK * required.value;
  const meets = atMost ? carried <= required.value + slack : carried >= required.value - slack;
  const carriedMeasure = { value: carried, dimension: required.dimension };
  return {
    item,
    required,
    carried: carriedMeasure,
    atMost,
    verdict: meets ? 'meets' : 'falls_short',
    source,
  };
}

function hoseCarried(layout: Layout, nominal: number): number | undefined {
  const { hose_carried } = layout.engine;
  return hose_carried
    ?.filter(({ hose }) => Math.abs((hose.nominal ?? hose.inside_diameter) - nominal) < SAME_SIZE)
    .reduce((sum, { length }) => sum + length, 0);
}

/** The loaded engine: the weights that the layout gives, and its water, pumps, hose and crew where no weight names them. */
export function loadedWeight(
  layout: Layout,
): { total: number; leftOut: string[]; note: Statement } | undefined {
  const { masses, leftOut } = weigh(layout);
  if (masses.length === 0) return undefined;
  const parts: Record<string, number> = {};
  const stated = (kind: Mass['kind'], name: string) =>
    kind === 'stated' || layout.engine.weights.some((weight) => weight.name === name);
  for (const { kind, name, mass } of masses) {
    const part = stated(kind, name) ? 'stated' : kind;
    parts[part] = (parts[part] ?? 0) + mass;
  }
  const present = Object.entries(parts).filter(([, mass]) => mass > 0);
  const values = Object.fromEntries(
    present.map(([name, value]) => [name, { value, dimension: 'mass' as const }]),
  );
  const summed = `Summed from ${present.map(([name]) => (name === 'stated' ? '{stated} of stated weights' : `{${name}} of ${name}`)).join(', ')}`;
  const total = present.reduce((sum, [, mass]) => sum + mass, 0);
  return { total, leftOut, note: { template: summed + besides(leftOut), values } };
}

/** What a sum leaves out, and how to bring it in. */
function besides(leftOut: readonly string[]): string {
  if (leftOut.length === 0) return '';
  return `; nothing states the weight of ${literal(leftOut.join('; '))}: the truck weighs more, and what is left under its rating is at most the difference. Name them under weights, as hose, pumps, crew or water, with 0 where another weight holds them`;
}
