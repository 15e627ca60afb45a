import type * as z from 'zod';
import { closeId } from '../catalogue/ids.js';
import { type Kind, type Model, SCHEMAS } from '../catalogue/kind.js';
import type { Catalogue } from '../catalogue/load.js';
import { type AppliancePolicy, DEFAULT_APPLIANCE_POLICY } from '../catalogue/schema/appliance.js';
import { withArticle } from '../quantity/article.js';
import { nearest } from '../quantity/nearest.js';
import { explain, wording } from './explain.js';
import { ProblemList } from './problem.js';
import { isMapping } from './schema/choice.js';
import type { Spot } from './spot.js';
import type { Modelled } from './step.js';

/** One reading of a layout: the catalogue it is read against and the problems found on the way. */
export class Reading {
  readonly problems = new ProblemList();
  readonly catalogue: Catalogue;
  /** What appliances cost by, once the layout has been asked. */
  policy: AppliancePolicy = DEFAULT_APPLIANCE_POLICY;
  /** Steps so far, their repeats written out. */
  steps = 0;

  constructor(catalogue: Catalogue) {
    this.catalogue = catalogue;
  }

  report(
    spot: Spot,
    message: string,
    more: { expected?: string; hint?: string; key?: boolean; within?: (string | number)[] } = {},
  ): undefined {
    const { within = [], ...rest } = more;
    if (!this.problems.full) this.problems.add(spot.source.problem([...spot.path, ...within], message, rest));
    return undefined;
  }

  /** What a schema makes of a spot, or of a value that stands in for it; problems are reported at the spot. */
  parse<S extends z.ZodType>(schema: S, spot: Spot, value: unknown = spot.value): z.output<S> | undefined {
    const parsed = schema.safeParse(value, { error: wording });
    if (parsed.success) return parsed.data;
    const { issues } = parsed.error;
    for (const { path, message, ...more } of explain(issues, schema, value)) {
      if (this.problems.full) break;
      this.report(spot, message, { ...more, within: path });
    }
    return undefined;
  }

  /** The model at a spot: an id of the catalogue, or a mapping of its own. */
  model<K extends Kind>(kind: K, spot: Spot): (Modelled & { model: Model<K> }) | undefined {
    const { value } = spot;
    if (typeof value !== 'string') {
      const model = this.parse(SCHEMAS[kind] as z.ZodType, spot) as Model<K> | undefined;
      if (model === undefined) return undefined;
      const own = 'name' in model ? model.name : undefined;
      return { model, modelName: own ?? `${withArticle(kind.replace('_', ' '))} of its own` };
    }
    const written = value.trim();
    const id = this.catalogue.idOf(kind, written);
    const model = id === undefined ? undefined : this.catalogue.find(kind, id);
    if (id === undefined || model === undefined) return this.unknownId(kind, written, spot);
    const named = 'name' in model ? model.name : undefined;
    return { id, model, modelName: named ?? id };
  }

  /** The model at a spot that may be missing, or hold what is no model; that the schema reports. */
  modelAt<K extends Kind>(kind: K, spot: Spot | undefined): (Modelled & { model: Model<K> }) | undefined {
    const { value } = spot ?? {};
    const known = (typeof value === 'string' && value.trim() !== '') || isMapping(value);
    return spot && known ? this.model(kind, spot) : undefined;
  }

  unknownId(kind: Kind, id: string, spot: Spot, key = false): undefined {
    const ids = this.catalogue.ids(kind);
    // The figure of a fitting is its angle, and fittings come in no sizes.
    const close = kind === 'fitting' ? nearest(id, ids) : closeId(id, ids);
    const what = kind.replace('_', ' ');
    const shown = id.length > 40 ? `${id.slice(0, 37)}...` : id;
    return this.report(spot, `the catalogue has no ${what} ${shown}`, {
      key,
      expected: close === undefined ? someOf(ids, kind) : undefined,
      hint: close === undefined ? undefined : `did you mean ${close}?`,
    });
  }
}

const MOST_NAMED = 12;

function someOf(ids: readonly string[], kind: Kind): string | undefined {
  if (ids.length === 0) return undefined;
  const more =
    ids.length > MOST_NAMED
      ? `, and ${ids.length - MOST_NAMED} more: pumpyoke catalogue ${kind} lists them`
      : '';
  return `one of ${ids.slice(0, MOST_NAMED).join(', ')}${more}`;
}
