import type { CheckAnswer } from '../../study/answer.js';
import { type Block, heading, type ListItem, paragraph } from '../document.js';
import type { Figures } from '../figures.js';
import { statementText } from '../sentence.js';
import { listed, STAGING_WORDS, sentence, VERDICT_WORDS } from '../words.js';

type Advice = NonNullable<CheckAnswer['stagingAdvice']>;

function shutOutText(weaker: string, from: number | undefined, atRest: boolean, figures: Figures): string {
  if (from === undefined)
    return atRest
      ? `${weaker} is shut out with nothing drawn, and gives nothing as far as the curves go.`
      : 'Neither pump shuts the other out.';
  const stands = figures.say('staging_advice.shut_out_from', 'pressure', from);
  const rest = atRest ? ', as it does with nothing drawn' : '';
  return `${weaker} moves no water once the outlet stands at ${stands}${rest}.`;
}

function parallelText(facts: NonNullable<Advice['parallel']>, figures: Figures): string {
  const { weaker, shutOutFrom, shutOutAtRest, balance, drooping } = facts;
  const parts = [shutOutText(weaker, shutOutFrom, shutOutAtRest, figures)];
  if (balance) {
    const throttle = figures.say('staging_advice.balance.throttle', 'ratio', balance.throttle, {
      decimals: 1,
    });
    const pressure = figures.say('staging_advice.balance.pressure', 'pressure', balance.pressure);
    parts.push(
      `${balance.pump} at ${throttle} of rated speed would bring both to the same share at the required flow, with ${pressure} at the outlet.`,
    );
  } else parts.push('At the required flow both move alike, or no throttle makes them.');
  if (drooping.length > 0)
    parts.push(`The curve of ${listed(drooping)} droops, which is unfit for parallel.`);
  return parts.join(' ');
}

function seriesText(facts: Advice['series'][number], figures: Figures): string {
  const { first, second, flow, between, betweenLimit, firstStops } = facts;
  const at = figures.say('staging_advice.series.flow', 'flow', flow);
  const stands = figures.say('staging_advice.series.between', 'pressure', between, { limit: betweenLimit });
  const limit =
    betweenLimit === undefined
      ? 'limit not stated'
      : `limit ${figures.stated('staging_advice.series.limit', { value: betweenLimit, dimension: 'pressure' })}`;
  const order = `Prime both, start ${first}, see pressure at the inlet of ${second}, then start ${second}; stop them the other way round.`;
  const parts = [`${stands} at the inlet of ${second} at ${at} (${limit}). ${order}`];
  if (firstStops) {
    const most = figures.say('staging_advice.first_stops.most', 'flow', firstStops.most);
    parts.push(
      firstStops.most === 0
        ? `If ${first} stops, ${second} cavitates through it whatever is drawn: stop ${second}, or open its own suction.`
        : firstStops.most < flow
          ? `If ${first} stops, ${second} can draw no more than ${most} through it without cavitating: stop ${second}, or open its own suction.`
          : `If ${first} stops, ${second} can still draw ${most} through it.`,
    );
  }
  return parts.join(' ');
}

/** Which staging suits, and how each is run safely. */
export function stagingAdviceSection(answer: CheckAnswer, figures: Figures): Block[] {
  const advice = answer.stagingAdvice;
  if (advice === undefined) return [];
  const { best, verdict, reason, parallel, series } = advice;
  const items: ListItem[] = [
    ...(parallel ? [{ lead: 'In parallel', lines: [capital(parallelText(parallel, figures))] }] : []),
    ...series.map((facts) => ({
      lead: `In ${STAGING_WORDS[facts.staging]}`,
      lines: [seriesText(facts, figures)],
    })),
  ];
  return [
    heading('Which staging suits'),
    paragraph(
      `${capital(STAGING_WORDS[best])} (${VERDICT_WORDS[verdict]}). ${sentence(statementText(reason, figures))}`,
    ),
    { kind: 'list', items },
    paragraph(
      'Source of the order of starting and of checking the inlet first: a pump text on pumps in series (title not kept); of drooping curves: general pump texts (common practice, no source).',
      'quiet',
    ),
  ];
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
