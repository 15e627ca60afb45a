import type { CheckAnswer, Requirement, StagingAnswer } from '../../study/answer.js';
import { type Block, type Cell, heading, type ListItem, paragraph } from '../document.js';
import type { Figures } from '../figures.js';
import { requiredFlow, requiredPressure } from '../required.js';
import { statementText } from '../sentence.js';
import { STAGING_WORDS, sentence, verdictCell } from '../words.js';

function atFlowCell(
  { atRequiredFlow, refusal }: StagingAnswer,
  required: Requirement,
  figures: Figures,
): string {
  if (refusal) return refusal.code === 'suction_short' ? 'cavitates' : 'cannot be';
  if (!atRequiredFlow) return 'cannot pass it';
  const field = 'stagings.at_required_flow';
  const { pressure, margin } = atRequiredFlow;
  const shown = figures.say(`${field}.pressure`, 'pressure', pressure, { limit: required.pressure });
  return `${shown} ${figures.margin(`${field}.margin`, 'pressure', margin)}`;
}

function atPressureCell(
  { atRequiredPressure, refusal }: StagingAnswer,
  required: Requirement,
  figures: Figures,
): string {
  if (!atRequiredPressure) return refusal ? 'not told' : 'never reached';
  const field = 'stagings.at_required_pressure';
  const { flow, margin } = atRequiredPressure;
  const shown = figures.say(`${field}.flow`, 'flow', flow, { limit: required.flow });
  return `${shown} ${figures.margin(`${field}.margin`, 'flow', margin)}`;
}

function row(line: StagingAnswer, answer: CheckAnswer, figures: Figures): Cell[] {
  const own = line.staging === answer.staging ? ' *' : '';
  return [
    `${STAGING_WORDS[line.staging]}${own}`,
    verdictCell(line.verdict),
    atFlowCell(line, answer.requirement, figures),
    atPressureCell(line, answer.requirement, figures),
    line.shutoff === undefined ? '' : figures.say('stagings.shutoff', 'pressure', line.shutoff),
  ];
}

/** A share below this is none. */
const NOTHING = 1e-6;

/** Only where the pumps split the flow: in series each carries all of it. */
function sharesText({ shares }: StagingAnswer, figures: Figures): string {
  const whole = shares.reduce((sum, { share }) => sum + share, 0);
  if (shares.length < 2 || whole > 1.001) return '';
  const parts = shares.map(({ pump, flow, share, cooling = 0 }) => {
    if (flow < -NOTHING)
      return `${figures.say('stagings.shares.flow', 'flow', -flow)} runs back through pump ${pump}`;
    const given = figures.say('stagings.shares.flow', 'flow', flow);
    // What a cooling line takes is worth a word where it is all that its pump moves.
    const apart = share < NOTHING && cooling > 0;
    const besides = apart
      ? `, and ${figures.say('stagings.shares.cooling', 'flow', cooling)} to its cooling line`
      : '';
    return `pump ${pump} gives ${given} (${figures.say('stagings.shares.share', 'ratio', share)})${besides}`;
  });
  return `${parts.join(', ')}.`;
}

function remark(line: StagingAnswer, figures: Figures): ListItem[] {
  const limit = line.limit ? sentence(statementText(line.limit, figures)) : '';
  const text = [sharesText(line, figures), limit].filter(Boolean).join(' ');
  return text ? [{ lines: [`${STAGING_WORDS[line.staging]}: ${text}`] }] : [];
}

export function stagingsSection(answer: CheckAnswer, figures: Figures): Block[] {
  const { stagings } = answer;
  const blocks: Block[] = [
    heading('Stagings side by side'),
    {
      kind: 'table',
      columns: [
        { title: 'Staging' },
        { title: 'Verdict' },
        { title: `At ${requiredFlow(answer, figures)}`, align: 'right' },
        { title: `At ${requiredPressure(answer, figures)}`, align: 'right' },
        { title: 'Shutoff', align: 'right' },
      ],
      rows: stagings.map((line) => row(line, answer, figures)),
    },
    paragraph('* as laid out; in brackets the margin over what is asked.', 'quiet'),
  ];
  const items = stagings.flatMap((line) => remark(line, figures));
  if (items.length > 0) blocks.push({ kind: 'list', items });
  return blocks;
}
