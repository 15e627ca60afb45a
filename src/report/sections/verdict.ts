import type { CheckAnswer } from '../../study/answer.js';
import { type Block, paragraph } from '../document.js';
import type { Figures } from '../figures.js';
import { requiredFlow, requiredPressure } from '../required.js';
import { statementText } from '../sentence.js';
import { counted, listed, STAGING_PHRASES, verdictTone } from '../words.js';
import { orificeLine } from './test-orifice.js';

function pressureClause(answer: CheckAnswer, figures: Figures): string {
  const { requirement, atRequiredFlow, refusal } = answer;
  const flow = requiredFlow(answer, figures);
  if (refusal && refusal.code !== 'past_curve')
    return `${flow} cannot be had: ${statementText(refusal, figures)}`;
  if (!atRequiredFlow) return `the pumps cannot pass ${flow}`;
  const { pressure, margin } = atRequiredFlow;
  const shown = figures.say('at_required_flow.pressure', 'pressure', pressure, {
    limit: requirement.pressure,
  });
  return `${shown} at ${flow} (${figures.overOrShort('at_required_flow.margin', 'pressure', margin)})`;
}

function flowClause(answer: CheckAnswer, figures: Figures): string {
  const { requirement, atRequiredPressure, refusal } = answer;
  const net = requirement.points.some((point) => point.net) ? ' net' : '';
  const pressure = requiredPressure(answer, figures) + net;
  if (!atRequiredPressure)
    return refusal && refusal.code !== 'past_curve'
      ? `no flow at ${pressure} can be told`
      : `${pressure} is never reached`;
  const { flow, margin } = atRequiredPressure;
  const shown = figures.say('at_required_pressure.flow', 'flow', flow, { limit: requirement.flow });
  return `${shown} at ${pressure} (${figures.overOrShort('at_required_pressure.margin', 'flow', margin)})`;
}

/** Where the orifice alone fails, its margin is the one that a reader needs first. */
function orificeFails({ pumpVerdict, refusal, atRequiredFlow, testOrifice }: CheckAnswer): boolean {
  const elsewhere = refusal !== undefined || (atRequiredFlow?.margin ?? -1) < -0.02;
  return pumpVerdict === 'falls_short' && !elsewhere && testOrifice !== undefined;
}

function orificeClause({ testOrifice }: CheckAnswer, figures: Figures): string {
  if (testOrifice?.margin === undefined) return 'at the test orifice no reading can be told';
  const short = figures.overOrShort('test_orifice.margin', 'pressure', testOrifice.margin);
  return `at the test orifice the gauge reads ${short}`;
}

function headline(answer: CheckAnswer, figures: Figures): string {
  const { requirement, verdict, pumpVerdict, staging, inventory } = answer;
  const joint = answer.refusal && answer.refusal.code !== 'past_curve' ? '; ' : ', ';
  const points = `${pressureClause(answer, figures)}${joint}${flowClause(answer, figures)}`;
  const figuresLine = orificeFails(answer) ? `${orificeClause(answer, figures)}; ${points}` : points;
  const phrase = STAGING_PHRASES[staging];
  if (verdict === 'meets') return `MEETS ${requirement.title} ${phrase}: ${figuresLine}`;
  const missing = inventory.filter((line) => line.verdict === 'falls_short').map((line) => line.item);
  if (pumpVerdict === 'meets') {
    const on = missing.length > 0 ? ` on ${listed(missing)}` : '';
    return `FALLS SHORT of ${requirement.title}${on}; the pumps meet it ${phrase}: ${figuresLine}`;
  }
  const too = missing.length > 0 ? `; so does ${listed(missing)}` : '';
  return `FALLS SHORT of ${requirement.title} ${phrase}: ${figuresLine}${too}`;
}

/** Danger is said beside the verdict, or a reader who stops at the first line would run it. */
export function stopLine(cautions: CheckAnswer['cautions']): Block[] {
  const stops = cautions.filter((caution) => caution.level === 'stop');
  if (stops.length === 0) return [];
  const places = listed([...new Set(stops.map((caution) => caution.at))]);
  return [
    paragraph(`STOP, do not run it so: ${counted(stops.length, 'danger')} at ${places}, see below.`, 'bad'),
  ];
}

export function verdictSection(answer: CheckAnswer, figures: Figures): Block[] {
  return [
    { kind: 'heading', level: 1, text: headline(answer, figures), tone: verdictTone(answer.verdict) },
    ...stopLine(answer.cautions),
    ...orificeLine(answer.testOrifice, figures),
    ...notStated(answer),
  ];
}

const silentName = ({ item, leftOut = [] }: CheckAnswer['inventory'][number]): string =>
  leftOut.length > 0 ? `parts of the ${item}` : item;

/** What the typing asks for and the layout is silent on: no verdict covers it. */
function notStated({ inventory }: CheckAnswer): Block[] {
  const silent = inventory.filter((line) => line.verdict === 'not_stated').map(silentName);
  if (silent.length === 0) return [];
  return [paragraph(`Not stated in the layout, and so not judged: ${listed(silent)}.`)];
}
