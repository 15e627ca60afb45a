import type { Measure } from '../quantity/dimension.js';
import { type Role, toUnit, type UnitSystem, unitFor } from '../quantity/format.js';
import type { CatalogueAnswer, FigureValue } from '../study/catalogue-answer.js';
import { checkedNumber } from './checked-number.js';
import { JSON_FORMAT } from './json.js';
import type { CatalogueJson, FigureJson } from './json-schema-catalogue.js';

/** Sizes across, which the trade reads in inches or millimetres. */
const ACROSS = /(?:^|\.)(?:nominal|inside_diameter|roughness|bore|tee_bore|tips|inlet_bore|outlet_bore)$/;
const BURN = /burn$/;

function roleOf(key: string): Role | undefined {
  if (ACROSS.test(key)) return 'bore';
  return BURN.test(key) ? 'burn' : undefined;
}

const isMeasure = (value: object): value is Measure => 'dimension' in value;

/** Digits that survive a conversion to SI and back, so that 250 psi is 250 again. */
const DIGITS = 12;

function valueTree(value: FigureValue, key: string, units: UnitSystem): FigureJson {
  if (typeof value === 'number') return checkedNumber(key, value);
  if (typeof value !== 'object') return value;
  if (Array.isArray(value)) return value.map((one) => valueTree(one, key, units));
  if (isMeasure(value)) {
    const unit = unitFor(value.dimension, units, roleOf(key));
    return { value: Number(checkedNumber(key, toUnit(value.value, unit)).toPrecision(DIGITS)), unit };
  }
  return Object.fromEntries(
    Object.entries(value).map(([name, one]) => [name, valueTree(one, `${key}.${name}`, units)]),
  );
}

/** The catalogue as other programs read it; the shape is `catalogueJson`. */
export function catalogueTree(answer: CatalogueAnswer, units: UnitSystem): CatalogueJson {
  return {
    format: JSON_FORMAT,
    question: answer.question,
    kinds: answer.kinds,
    entries: answer.entries.map(({ kind, id, scheme, name, note, figures }) => ({
      kind,
      id,
      scheme: scheme ?? null,
      name: name ?? null,
      note: note ?? null,
      figures: figures.map(({ key, written, value, source }) => ({
        key,
        written,
        value: valueTree(value, key, units),
        source: source ?? null,
      })),
    })),
  };
}
