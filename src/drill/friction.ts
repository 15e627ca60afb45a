import type { Drafting, Setting } from './draft.js';
import { HOSE, REFERENCE_COEFFICIENT } from './equipment.js';
import { figure } from './print.js';
import { type FrictionRule, HOSE_SIZES, type HoseSize } from './rules/rule-set.js';

const hoseFacts = (setting: Setting, size: HoseSize) => HOSE[setting.units][size];

export interface FrictionPart {
  readonly symbol: string;
  readonly say: string;
  readonly size: HoseSize;
  /** The flow's symbol, and its value where a table is read. */
  readonly flow: string;
  readonly flowValue: number;
  readonly length: string;
  /** Put behind the symbols of constants where several hoses need some: `1`. */
  readonly tag?: string;
  /** No slips of its own: another part of the problem is what is taught. */
  readonly quiet?: boolean;
}

/** The friction in a length of hose by the rule set's method, with the slips that go with it. */
export function friction(d: Drafting, part: FrictionPart): void {
  const { setting } = d;
  const { rules, unit } = setting;
  const { symbol, size, flow, length, tag = '', quiet = false } = part;
  const hose = hoseFacts(setting, size).name;
  const hundreds = `(${length} / (100 ${unit.l}))`;
  const q = `(${flow} / (100 ${unit.q}))`;
  const rule = rules.friction.hoses[size];
  if (rule === undefined) throw new Error(`${setting.ruleSet.name} has no friction for ${hose} hose`);
  const formula = frictionFormula(d, rules.friction, part, { q, hundreds, hose, tag });
  d.step(symbol, part.say, formula.right, unit.pressure);
  if (quiet) return;
  d.slip(formula.slip.slip, { formulas: { [symbol]: formula.slip.formula }, set: formula.slip.set });
  const withLength = (by: string) => formula.right.replace(hundreds, `(${length} / (${by} ${unit.l}))`);
  d.slip('length-not-per-hundred', { formulas: { [symbol]: withLength('1') } });
  d.slip('point-misplaced', { formulas: { [symbol]: withLength('10') } });
  if (rules.friction.method === 'coefficient' || rules.friction.method === 'condensed_q') {
    const whole = formula.right.replace(q, `(${flow} / (1 ${unit.q}))`);
    d.slip('flow-not-per-hundred', { formulas: { [symbol]: whole } });
  }
  if (rules.friction.method !== 'coefficient') {
    const mixed = `${REFERENCE_COEFFICIENT[size]} ${unit.p} * ${q}^2 * ${hundreds}`;
    d.slip('method-mixed', { formulas: { [symbol]: mixed } });
  }
  for (const wrong of formula.otherSizes) d.slip('wrong-coefficient', { set: wrong.set, why: wrong.why });
}

interface FrictionFormula {
  readonly right: string;
  readonly slip: {
    readonly slip: 'flow-not-squared' | 'ten-not-taken-off' | 'term-dropped' | 'wrong-row';
    readonly formula: string;
    readonly set?: Record<string, number>;
  };
  readonly otherSizes: { set: Record<string, number>; why: string }[];
}

interface Written {
  readonly q: string;
  readonly hundreds: string;
  readonly hose: string;
  readonly tag: string;
}

function frictionFormula(
  d: Drafting,
  rule: FrictionRule,
  { size, flow, flowValue }: FrictionPart,
  { q, hundreds, hose, tag }: Written,
): FrictionFormula {
  const { setting } = d;
  const { unit } = setting;
  const per = `100 ${unit.length}`;
  const others = <T>(figureOf: (other: HoseSize) => T | undefined): [HoseSize, T][] => {
    const at = HOSE_SIZES.indexOf(size);
    const near = [HOSE_SIZES[at - 1], HOSE_SIZES[at + 1]].filter((other) => other !== undefined);
    return near.flatMap((other) => {
      const found = figureOf(other);
      return found === undefined ? [] : [[other, found] as [HoseSize, T]];
    });
  };
  const why = (other: HoseSize) =>
    `The friction figure of ${hoseFacts(setting, other).name} hose was used for ${hose} hose.`;
  switch (rule.method) {
    case 'coefficient': {
      const own = rule.hoses[size];
      const C = `C${tag}`;
      const name = `coefficient of ${hose} hose: loss of ${per} at 100 ${unit.flow}`;
      d.rule(C, name, own?.coefficient ?? Number.NaN, unit.pressure, own?.source ?? '');
      const right = `${C} * ${q}^2 * ${hundreds}`;
      return {
        right,
        slip: { slip: 'flow-not-squared', formula: `${C} * ${q} * ${hundreds}` },
        otherSizes: others((other) => rule.hoses[other]?.coefficient).map(([other, value]) => ({
          set: { [C]: value },
          why: why(other),
        })),
      };
    }
    case 'condensed_q': {
      const own = rule.hoses[size];
      const D = `D${tag}`;
      d.rule(D, `divisor of ${hose} hose`, own?.divisor ?? Number.NaN, '', own?.source ?? '');
      return {
        right: `${q}^2 / ${D} * (1 ${unit.p}) * ${hundreds}`,
        slip: { slip: 'flow-not-squared', formula: `${q} / ${D} * (1 ${unit.p}) * ${hundreds}` },
        otherSizes: others((other) => rule.hoses[other]?.divisor).map(([other, value]) => ({
          set: { [D]: value },
          why: why(other),
        })),
      };
    }
    case 'drop_ten': {
      d.cite(`loss of ${per} is the flow without its last digit, less 10`, rule.hoses[size]?.source ?? '');
      const tens = `${flow} / (10 ${unit.q})`;
      return {
        right: `(${tens} - 10) * (1 ${unit.p}) * ${hundreds}`,
        slip: { slip: 'ten-not-taken-off', formula: `${tens} * (1 ${unit.p}) * ${hundreds}` },
        otherSizes: [],
      };
    }
    case 'tenths': {
      const own = rule.hoses[size];
      const N = `N${tag}`;
      d.rule(N, `N of ${hose} hose`, own?.factor ?? Number.NaN, '', own?.source ?? '');
      const tens = `${flow} * ${N} / (10 ${unit.q})`;
      return {
        right: `(${tens} - 10) * (1 ${unit.p}) * ${hundreds}`,
        slip: { slip: 'ten-not-taken-off', formula: `${tens} * (1 ${unit.p}) * ${hundreds}` },
        otherSizes: others((other) => rule.hoses[other]?.factor).map(([other, value]) => ({
          set: { [N]: value },
          why: why(other),
        })),
      };
    }
    case 'old_square': {
      const own = rule.hoses[size];
      const share = own?.share ?? Number.NaN;
      const S = `share${tag}`;
      const second = flowValue < 100 ? `${q} / 2` : q;
      d.cite(
        `loss of ${per} of 2-1/2 in hose is 2Q² + Q, Q in hundreds of ${unit.flow} (Q/2 in place of Q under 100)`,
        own?.source ?? '',
      );
      d.rule(S, `share of the loss in 2-1/2 in hose, for ${hose} hose`, share, '', own?.source ?? '');
      return {
        right: `${S} * (2 * ${q}^2 + ${second}) * (1 ${unit.p}) * ${hundreds}`,
        slip: { slip: 'term-dropped', formula: `${S} * 2 * ${q}^2 * (1 ${unit.p}) * ${hundreds}` },
        otherSizes: others((other) => rule.hoses[other]?.share).map(([other, value]) => ({
          set: { [S]: value },
          why: why(other),
        })),
      };
    }
    case 'table': {
      const own = rule.hoses[size];
      const rows = own?.table ?? [];
      const at = rows.findIndex(([q1]) => q1 === flowValue);
      if (at < 0) throw new Error(`the table of ${hose} hose has no row for ${flowValue} ${unit.flow}`);
      const F = `F${tag}`;
      const name = `loss of ${per} of ${hose} hose at ${figure(flowValue, unit.flow)}, read off the table`;
      d.rule(F, name, rows[at][1], unit.pressure, own?.source ?? '');
      const wrongRow = rows[at + 1] ?? rows[at - 1];
      return {
        right: `${F} * ${hundreds}`,
        slip: { slip: 'wrong-row', formula: `${F} * ${hundreds}`, set: { [F]: wrongRow[1] } },
        otherSizes: rows
          .filter((_, index) => Math.abs(index - at) === 1 && rows[index] !== wrongRow)
          .map(([, loss]) => ({ set: { [F]: loss }, why: 'The wrong row of the table was read.' })),
      };
    }
  }
}
