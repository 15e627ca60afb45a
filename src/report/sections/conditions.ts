import type { Dimension } from '../../quantity/dimension.js';
import type {
  AcrossAnswer,
  CheckAnswer,
  HighestPlace,
  PowerBracket,
  SweptQuantity,
  VerdictUnder,
} from '../../study/answer.js';
import { type Block, type Cell, type Column, heading, paragraph } from '../document.js';
import type { Figures } from '../figures.js';
import { requiredFlow } from '../required.js';
import { listed, verdictCell } from '../words.js';

const SWEPT: Record<SweptQuantity, { title: string; column: string; dimension: Dimension }> = {
  elevation: { title: 'From place to place', column: 'Height', dimension: 'length' },
  air_temperature: { title: 'From cool air to hot', column: 'Air', dimension: 'temperature' },
  water_temperature: { title: 'From cold water to warm', column: 'Water', dimension: 'temperature' },
  wear: { title: 'As both pumps wear', column: 'Wear', dimension: 'ratio' },
  tank_level: { title: 'As the tank is drawn down', column: 'Tank', dimension: 'ratio' },
};

function pressureCell({ pressure, margin, refusal }: VerdictUnder, figures: Figures): string {
  if (pressure === undefined || margin === undefined)
    return refusal === undefined || refusal.code === 'past_curve' ? 'cannot pass it' : 'cannot be';
  const shown = figures.say('across.pressure', 'pressure', pressure, { limit: pressure - margin });
  return `${shown} ${figures.margin('across.margin', 'pressure', margin)}`;
}

function readingCell({ reading, readingMargin, refusal }: VerdictUnder, figures: Figures): string {
  if (reading === undefined) return refusal ? 'not told' : '';
  const limit = readingMargin === undefined ? undefined : reading - readingMargin;
  return figures.say('across.reading', 'pressure', reading, { limit });
}

function whyWords({ code, pump }: NonNullable<VerdictUnder['refusal']>): string {
  switch (code) {
    case 'suction_short':
      return `${pump} cavitates`;
    case 'water_parts':
      return pump === undefined ? 'water parts' : `water parts at ${pump}`;
    case 'past_curve':
      return pump === undefined ? 'past its curve' : `${pump} past its curve`;
    case 'hose_flat':
      return 'hose falls flat';
    default:
      return 'no steady state';
  }
}

/** What holds the pumps: the power of those that have too little of it, else their governors. */
function heldCell({ pumps, refusal }: VerdictUnder): Cell {
  const short = pumps.filter(({ limitedBy }) => limitedBy === 'power').map(({ name }) => name);
  const starved = refusal === undefined ? '' : whyWords(refusal);
  const held =
    short.length > 0
      ? `power of ${listed(short)}`
      : pumps.length > 0 && pumps.every(({ limitedBy }) => limitedBy === 'governor')
        ? 'governors'
        : 'not known';
  return starved ? { text: `${held}; ${starved}`, tone: 'bad' } : held;
}

function columns(first: string, answer: CheckAnswer, figures: Figures, reading: boolean): Column[] {
  return [
    { title: first },
    { title: 'Pumps' },
    { title: `At ${requiredFlow(answer, figures)}`, align: 'right' },
    ...(reading ? [{ title: 'Orifice', align: 'right' as const }] : []),
    { title: 'Held by' },
  ];
}

function cells(here: VerdictUnder, figures: Figures, reading: boolean): Cell[] {
  return [
    verdictCell(here.verdict),
    pressureCell(here, figures),
    ...(reading ? [readingCell(here, figures)] : []),
    heldCell(here),
  ];
}

/** What a table holds besides, in place of what the layout has. */
const HELD: Record<SweptQuantity, string> = {
  elevation: 'at',
  air_temperature: 'in air of',
  water_temperature: 'with water of',
  wear: 'with both pumps worn by',
  tank_level: 'with the tank filled to',
};

function givenText({ given }: AcrossAnswer, figures: Figures): string {
  const each = given.map(
    ({ of, value }) => `${HELD[of]} ${figures.say('across.given', SWEPT[of].dimension, value)}`,
  );
  return each.length === 0 ? '' : `, ${listed(each)}`;
}

function acrossTable(across: AcrossAnswer, answer: CheckAnswer, figures: Figures): Block[] {
  const { title, column, dimension } = SWEPT[across.of];
  const reading = across.rows.some((row) => row.reading !== undefined);
  return [
    heading(`${title}${givenText(across, figures)}`),
    {
      kind: 'table',
      columns: columns(column, answer, figures, reading),
      rows: across.rows.map((row) => [
        figures.say('across.value', dimension, row.value),
        ...cells(row, figures, reading),
      ]),
    },
    paragraph('The pumps alone are judged here, with everything else as laid out.', 'quiet'),
    ...sparePower(across),
  ];
}

/** That the rows are the better end of a bracket, where thinner or hotter air may take power that no file gives. */
function sparePower({ of, rows }: AcrossAnswer): Block[] {
  if (of !== 'elevation' && of !== 'air_temperature') return [];
  const unknown = rows[0]?.pumps.filter(({ limitedBy }) => limitedBy === 'not_known') ?? [];
  if (unknown.length === 0) return [];
  const names = listed(unknown.map(({ name }) => name));
  return [
    paragraph(
      `No file gives the power of ${names}: these rows take it to have power to spare. If its engine was at its limit when the curve was measured, it makes less than this where the air is thinner or hotter.`,
    ),
  ];
}

export function acrossSection(answer: CheckAnswer, figures: Figures): Block[] {
  return answer.across.flatMap((across) => acrossTable(across, answer, figures));
}

/** How high the truck may go, in one sentence. */
export function highestText(highest: HighestPlace, figures: Figures): string {
  const { stands, upTo, cases } = highest;
  if (cases) return bracketedText(cases, figures);
  if (stands === 'nowhere' || upTo === undefined)
    return 'With this air the pumps do not make it at any height, nor at sea level.';
  const height = figures.say('highest_place.up_to', 'length', upTo);
  return stands === 'everywhere'
    ? `With this air the pumps make it as high as is looked, ${height}.`
    : `With this air the pumps make it up to ${height} above sea level.`;
}

const AT_LIMIT = { power_to_spare: '', constant_power: ' by constant power', flat_torque: ' by flat torque' };

/** Between an engine with power to spare and one at its limit, where no file says which it is. */
function bracketedText(cases: NonNullable<HighestPlace['cases']>, figures: Figures): string {
  const said = cases.map(({ engine, stands, upTo }) => {
    if (stands === 'nowhere' || upTo === undefined) return `nowhere${AT_LIMIT[engine]}`;
    const height = figures.say('highest_place.up_to', 'length', upTo);
    return `${stands === 'everywhere' ? 'to' : 'up to'} ${height}${AT_LIMIT[engine]}`;
  });
  const [spare, ...limited] = said;
  const beyond = cases[0].stands === 'everywhere' ? ', and no higher place is looked at' : '';
  return `How high the pumps make it with this air rests on power that no file gives. If the engine was at its limit when the curve was measured: ${limited.join(', ')}. Only if it has power to spare: ${spare} above sea level${beyond}.`;
}

const LUGGING: Record<PowerBracket['cases'][number]['lugging'], string> = {
  constant_power: 'its limit, constant power',
  flat_torque: 'its limit, flat torque',
};

/** The range that a verdict stands in where a file has no power data. */
function bracketSection(answer: CheckAnswer, figures: Figures): Block[] {
  const { powerBracket } = answer;
  if (powerBracket === undefined) return [];
  const { pumps, cases } = powerBracket;
  const reading = cases.some((one) => one.reading !== undefined);
  const names = listed(pumps.map(({ name }) => name));
  const parts = pumps.map(({ ratio }) => figures.say('power_bracket.ratio', 'ratio', ratio));
  const left = [...new Set(parts)].join(' and ');
  return [
    paragraph(
      `The file of ${names} does not say what power its engine has and the pump takes. With power to spare it loses nothing, as the verdict has it; if its engine was at its limit when the curve was measured, ${left} of that power is left here, and:`,
    ),
    {
      kind: 'table',
      columns: columns('Engine at', answer, figures, reading),
      rows: cases.map((one) => [LUGGING[one.lugging], ...cells(one, figures, reading)]),
    },
  ];
}

/** Power and place: how high the verdict holds, and what it is where power is not known. */
export function conditionsSection(answer: CheckAnswer, figures: Figures): Block[] {
  const { highestPlace } = answer;
  const bracket = bracketSection(answer, figures);
  if (highestPlace === undefined && bracket.length === 0) return acrossSection(answer, figures);
  return [
    heading('How high it stands'),
    ...(highestPlace ? [paragraph(highestText(highestPlace, figures))] : []),
    ...bracket,
    ...acrossSection(answer, figures),
  ];
}
