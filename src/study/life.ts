import type { EnginePump, Layout, PumpName, TypingAsked } from '../layout/layout.js';
import { under } from './conditions.js';
import type { LifeAnswer, ServiceDue } from './engine-answer.js';
import { closeIn } from './falling-root.js';
import { ruleOn, slackHere, slackOf, verdictHere, verdictUnder } from './judge.js';
import type { Rig } from './rig.js';

/** Wear is found to this, and looked for up to the most that a layout may state. */
const WEAR_FOUND = 5e-4;
/** Most ratings are lost within so much more wear: looked at first. */
const USUAL_SPAN = 0.1;
const MOST_WEAR = 0.9;
/** Near enough: a slack of this part of what is asked. */
const NEAR = 1e-4;

/** The pair over its life: hours, services, and what wear has done and may yet do to the verdict. */
export function lifeOf(rig: Rig, typing: TypingAsked): LifeAnswer {
  const { layout } = rig;
  const { staging, engine } = layout;
  const both = (['a', 'b'] as const).flatMap((name) => {
    const pump = engine.pumps[name];
    return pump ? [{ name, pump }] : [];
  });
  const slackAt = (worn: Layout) => slackHere(rig.with(worn), typing);
  const ruling = ruleOn(rig, typing, staging);
  const here = verdictUnder(ruling);
  const slackNow = slackOf(ruling);
  const short = ruling.verdict !== 'meets';
  const unworn = verdictHere(rig.with(under(layout, { wear: 0 })), typing);
  const works = ({ name }: { name: PumpName }) => staging !== (name === 'a' ? 'b' : 'a');
  const bears = (from: number, worn: (wear: number) => Layout) =>
    short ? undefined : borne(from, (wear) => slackAt(worn(wear)), slackNow);
  const used = both.filter(works);
  const least = Math.min(...used.map(({ pump }) => pump.wear));
  // Both at the wear of the better one may fall short where they make it as they are.
  const alike = (wear: number) => under(layout, { wear });
  const evenSlack = short ? -1 : slackAt(alike(least));
  return {
    pumps: both.map(({ name, pump }) => ({
      name: `pump ${name}`,
      hours: pump.hours,
      wear: pump.wear,
      services: servicesOf(pump),
      bears:
        used.length > 1 && works({ name })
          ? bears(pump.wear, (wear) => wornAlone(layout, name, wear))
          : undefined,
    })),
    lead: leadOf(both),
    unworn:
      unworn.margin === undefined
        ? undefined
        : {
            margin: unworn.margin,
            cost: here.margin === undefined ? undefined : unworn.margin - here.margin,
          },
    bothBear: evenSlack < 0 ? undefined : borne(least, (wear) => slackAt(alike(wear)), evenSlack),
    short,
    ...partsInCommon(both.map(({ pump }) => pump)),
  };
}

function wornAlone(layout: Layout, name: PumpName, wear: number): Layout {
  const { engine } = layout;
  const { a, b } = engine.pumps;
  const pumps = name === 'a' ? { a: { ...a, wear }, b } : { a, b: b && { ...b, wear } };
  return { ...layout, engine: { ...engine, pumps } };
}

/** The wear up to which a slack that falls with it stays above 0; undefined where it does up to the most. */
function borne(from: number, slackAt: (wear: number) => number, atFrom: number): number | undefined {
  let high = Math.min(MOST_WEAR, from + USUAL_SPAN);
  let atHigh = slackAt(high);
  if (atHigh >= 0 && high < MOST_WEAR) {
    high = MOST_WEAR;
    atHigh = slackAt(high);
  }
  if (atHigh >= 0) return undefined;
  const bracket = { low: from, atLow: { value: atFrom }, high, atHigh: { value: atHigh } };
  const evaluate = (wear: number) => ({ value: slackAt(wear) });
  return closeIn(evaluate, bracket, WEAR_FOUND, ({ value }) => value < NEAR).low;
}

/** The pump with fewer hours, which should lead until they are even. */
function leadOf(both: readonly { name: PumpName; pump: EnginePump }[]): LifeAnswer['lead'] {
  if (both.length < 2) return undefined;
  const [a, b] = both.map(({ pump }) => pump.hours);
  if (a === undefined || b === undefined || a === b) return undefined;
  return { name: a < b ? 'pump a' : 'pump b', behind: Math.abs(a - b) };
}

/** When each service that the pump's maker asks for falls due; one never done counts from new. */
export function servicesOf({ model, hours, serviced }: EnginePump): ServiceDue[] {
  return Object.entries(model.service ?? {}).map(([service, { every, months }]) => {
    const done = serviced?.[service];
    const at = every === undefined ? undefined : (done?.at ?? 0) + every;
    return {
      service,
      at,
      left: at === undefined || hours === undefined ? undefined : at - hours,
      on: months === undefined || done?.on === undefined ? undefined : monthsAfter(done.on, months),
    };
  });
}

/** The day some months after another; the last of the month where it has no such day. */
function monthsAfter(day: string, months: number): string {
  const [year, month, date] = day.split('-').map(Number);
  const last = new Date(Date.UTC(year, month + months, 0)).getUTCDate();
  return new Date(Date.UTC(year, month - 1 + months, Math.min(date, last))).toISOString().slice(0, 10);
}

function partsInCommon(pumps: readonly EnginePump[]): Pick<LifeAnswer, 'sameModel' | 'partsInCommon'> {
  const [a, b] = pumps;
  if (b === undefined) return { sameModel: false };
  const sameModel = (a.id !== undefined && a.id === b.id) || alike(a.model, b.model);
  const own = a.model.parts;
  const shared = sameModel ? own : own?.filter((part) => b.model.parts?.includes(part));
  return { sameModel, partsInCommon: b.model.parts === undefined ? undefined : shared };
}

/** Whether two files say the same, in whatever order: a mapping that is named twice is read twice. */
function alike(one: unknown, other: unknown): boolean {
  if (one === other) return true;
  if (typeof one !== 'object' || typeof other !== 'object' || one === null || other === null) return false;
  const keys = Object.keys(one);
  const same = (key: string) =>
    alike((one as Record<string, unknown>)[key], (other as Record<string, unknown>)[key]);
  return keys.length === Object.keys(other).length && keys.every(same);
}
