import type { Document, StepText } from './layouts.js';
import type { Random } from './random.js';

/** What a random layout may hold. */
export interface LayoutOptions {
  /** Curves that droop, valves shut, curves that end early: whatever may have no answer. Off, every layout has one. */
  wild?: boolean;
  /** Branches with nozzles of their own in the engine's plumbing. */
  tapped?: boolean;
  stagings?: readonly string[];
}

/**
 * A layout of anything that the format can say, as it would be written. It is nearly always sound in itself; where a bore is
 * missing the reader is to say so.
 */
export function randomLayout(random: Random, size: number, options: LayoutOptions = {}): Document {
  return new LayoutMaker(random, options).layout(size);
}

const HOSES = ['forestry-1.5', 'forestry-1', 'attack-1.75', 'double-jacket-2.5', 'booster-1'];
const APPLIANCES = ['gated-wye', 'siamese', 'reducer', 'manifold'];
const BRANCHES = ['gated-wye', 'tee', 'plain', 'water-thief'];
const FITTINGS = ['elbow_90', 'elbow_45', 'tee_branch', 'ball_valve', 'swing_check'];
const CHECKS = ['swing', 'lift', 'tilting-disc'];
const VALVES = ['ball', 'gate', 'butterfly'];
const POLICIES = ['structural', 'wildland', 'engineering'];
const CLASSES = ['engine-1', 'engine-3', 'engine-4', 'engine-5', 'engine-6', 'engine-7'];

class LayoutMaker {
  private readonly random: Random;
  private readonly options: LayoutOptions;
  private named = 0;

  constructor(random: Random, options: LayoutOptions) {
    this.random = random;
    this.options = options;
  }

  layout(size: number): Document {
    const { random } = this;
    const two = random.chance(0.85);
    const choices = this.options.stagings ?? ['parallel', 'series', 'series_reversed', 'a', 'b', 'separate'];
    const staging = two ? random.pick(choices) : 'a';
    const engine = this.engine(two, staging);
    const outlets = Object.keys((engine.outlets as Document) ?? {});
    const lays = outlets.filter(() => random.chance(0.7));
    const each = Math.max(1, Math.floor(size / Math.max(1, lays.length)));
    const lay =
      outlets.length > 0
        ? Object.fromEntries(lays.map((name) => [name, this.line(each, 3)]))
        : random.chance(0.9)
          ? this.line(size, 3)
          : [];
    return {
      title: 'drawn at random',
      ...this.maybe('site', 0.6, () => this.site()),
      engine,
      staging,
      ...this.maybe('throttle', 0.5, () => this.throttle(two)),
      ...this.maybe('supply', 0.4, () => this.supply()),
      ...this.maybe('appliance_policy', 0.5, () => random.pick(POLICIES)),
      typing: this.typing(),
      lay,
    };
  }

  private maybe(key: string, chance: number, make: () => unknown): Document {
    return this.random.chance(chance) ? { [key]: make() } : {};
  }

  private measure(low: number, high: number, unit: string): string {
    return `${Number(this.random.between(low, high).toPrecision(4))} ${unit}`;
  }

  private name(kind: string): string {
    this.named++;
    return `${kind} no ${this.named}`;
  }

  private site(): Document {
    return {
      elevation: this.measure(0, 9000, 'ft'),
      air_temperature: this.measure(20, 110, 'degF'),
      water_temperature: this.measure(35, 90, 'degF'),
    };
  }

  private throttle(two: boolean): unknown {
    const { random } = this;
    if (random.chance(0.3)) return { discharge_pressure: this.measure(40, 400, 'psi') };
    if (two && random.chance(0.4)) return { a: this.measure(40, 110, '%'), b: this.measure(40, 110, '%') };
    return this.measure(30, 110, '%');
  }

  private supply(): unknown {
    const { random } = this;
    const kind = random.integer(0, 3);
    if (kind === 0) return 'tank';
    if (kind === 1) return { relay: { pressure: this.measure(0, 150, 'psi') } };
    if (kind === 2) {
      const still = random.between(30, 120);
      return {
        hydrant: {
          static: `${still} psi`,
          residual: `${still * random.between(0, 1)} psi`,
          flow: this.measure(50, 1500, 'gpm'),
        },
      };
    }
    const suction = [this.hose(), ...this.through(2)];
    return {
      draft: {
        lift: this.measure(0, 15, 'ft'),
        ...this.maybe('suction', 0.8, () => suction),
        ...this.maybe('strainer', 0.5, () =>
          random.chance(0.5) ? { k: 2 } : { k: 2, inside_diameter: '3 in' },
        ),
      },
    };
  }

  private typing(): Document {
    const { random } = this;
    if (random.chance(0.4)) return { scheme: 'nwcg', class: random.pick(CLASSES) };
    const point = () => ({
      flow: this.measure(10, 300, 'gpm'),
      pressure: this.measure(50, 400, 'psi'),
      ...this.maybe('net', 0.3, () => true),
    });
    const orifice = this.maybe('test_orifice', 0.5, () => ({
      bore: '0.6 in',
      discharge_coefficient: 0.62,
      passes: '150 psi',
      ...this.maybe('tee_bore', 0.5, () => '1.5 in'),
    }));
    return { custom: { ...(random.chance(0.3) ? { points: [point(), point()] } : point()), ...orifice } };
  }

  private engine(two: boolean, staging: string): Document {
    const { random } = this;
    const apart = staging === 'separate';
    const pump = () => ({ model: this.pump(), ...this.maybe('wear', 0.3, () => this.measure(0, 20, '%')) });
    const names = ['left', 'right', 'rear'].slice(0, apart ? random.integer(2, 3) : random.integer(1, 3));
    const outlet = (name: string) => {
      const steps = this.through(2);
      return apart ? { pump: name === 'right' ? 'b' : 'a', steps } : steps;
    };
    return {
      name: 'Engine drawn at random',
      tank: { capacity: this.measure(50, 1500, 'gal'), outlet_height: this.measure(-1, 5, 'ft') },
      pumps: { a: pump(), ...(two ? { b: pump() } : {}) },
      ...this.maybe('plumbing', 0.8, () => this.plumbing()),
      ...this.maybe('relief', 0.3, () => ({ opens_at: this.measure(50, 500, 'psi') })),
      ...(apart || random.chance(0.5)
        ? { outlets: Object.fromEntries(names.map((n) => [n, outlet(n)])) }
        : {}),
      ...this.maybe('hose_carried', 0.3, () => [
        { hose: random.pick(HOSES), length: this.measure(50, 2000, 'ft') },
      ]),
      ...this.maybe('crew', 0.3, () => random.integer(0, 5)),
      ...this.maybe('gross_weight_rating', 0.3, () => this.measure(9000, 30000, 'lb')),
      ...this.maybe('weights', 0.3, () => ({ chassis: this.measure(5000, 12000, 'lb'), body: '2,000 lb' })),
    };
  }

  private plumbing(): Document {
    const { random } = this;
    const each = (list: string) =>
      this.maybe(list, 0.7, () =>
        random.chance(0.5) ? this.through(3) : { a: this.through(3), b: this.through(3) },
      );
    return {
      ...this.maybe('intake', 0.6, () => this.through(3)),
      ...each('suction'),
      ...each('discharge'),
      ...this.maybe('transfer', 0.6, () => this.through(3)),
      ...this.maybe('manifold', 0.6, () => this.through(3)),
      ...this.maybe('cooling', 0.4, () => ({ orifice: '1/16 in' })),
    };
  }

  private pump(): Document | string {
    const { random } = this;
    if (random.chance(0.2)) return 'demo-highlift';
    const shutoff = random.between(80, 450);
    const last = random.between(30, 250);
    const count = random.integer(3, 6);
    const start = random.chance(0.8) ? 0 : 0.1;
    const droop = this.options.wild && random.chance(0.2) ? 0.4 : 0;
    const bend = random.between(1, 3);
    const points = Array.from({ length: count }, (_, i) => {
      const x = start + ((1 - start) * i) / (count - 1);
      const head = shutoff * (1 + droop * x * (1 - x) - 0.8 * x ** bend);
      return [`${last * x} gpm`, `${head} psi`];
    });
    return {
      points,
      ...this.maybe('shape', 0.4, () =>
        random.pick(count === 3 ? ['quadratic', 'monotone'] : ['monotone', 'quadratic']),
      ),
      ...this.maybe('rated_speed', 0.5, () => '6,500 rpm'),
      ...this.maybe('outlet_bore', 0.5, () => '2 in'),
      ...this.maybe('limits', 0.5, () => ({ inlet: '150 psi', casing: '500 psi' })),
      ...this.maybe('efficiency', 0.4, () => [
        ['10 gpm', '20 %'],
        ['100 gpm', '60 %'],
      ]),
      ...this.maybe('npsh_required', 0.4, () => [
        ['10 gpm', '5 ft'],
        ['100 gpm', '15 ft'],
      ]),
      ...this.maybe('tested_at', 0.2, () => ({ water_temperature: '70 degF' })),
      ...this.maybe('weight', 0.3, () => '165 lb'),
    };
  }

  private hose(level = false): StepText {
    const { random } = this;
    const feet = random.between(10, 400);
    const own = [
      { inside_diameter: this.measure(0.75, 3, 'in'), coefficient: random.between(0.5, 200) },
      { inside_diameter: this.measure(0.75, 3, 'in'), roughness: this.measure(0, 0.01, 'in') },
      { inside_diameter: this.measure(0.75, 3, 'in'), hazen_williams: random.between(80, 150) },
    ];
    return {
      hose: random.chance(0.5) ? random.pick(HOSES) : random.pick(own),
      length: `${feet} ft`,
      ...(level ? {} : this.maybe('rise', 0.5, () => `${feet * random.between(-0.6, 0.6)} ft`)),
      ...this.maybe('lines', 0.2, () => random.integer(1, 3)),
    };
  }

  private pipe(): StepText {
    const { random } = this;
    const fittings = Object.fromEntries([[random.pick(FITTINGS.slice(0, 4)), random.integer(1, 3)]]);
    if (random.chance(0.1)) Object.assign(fittings, { swing_check: 1 });
    const long = random.chance(0.8);
    return {
      pipe: random.pick([
        'stainless-10s-2',
        'stainless-40s-1.5',
        { inside_diameter: '2 in', roughness: '0.0018 in' },
      ]),
      ...(long ? { length: this.measure(1, 20, 'ft') } : {}),
      ...(!long || random.chance(0.6) ? { fittings } : {}),
    };
  }

  /** A loss of any kind, now and then in a bore that may not be known. */
  private localLoss(): Document {
    const { random } = this;
    const kind = random.integer(0, 4);
    if (kind === 0) return { loss: this.measure(0, 15, 'psi') };
    if (kind === 1) return { flow_coefficient: random.between(5, 200) };
    if (kind === 2) return { k: random.between(0, 5) };
    if (kind === 3)
      return { friction_multiple: random.between(0, 400), inside_diameter: this.measure(0.75, 3, 'in') };
    return { k: random.between(0, 5), inside_diameter: this.measure(0.75, 3, 'in') };
  }

  private valve(): StepText {
    const { random } = this;
    const shut = this.options.wild && random.chance(0.1);
    const own = {
      ...this.localLoss(),
      part_open: [
        ['100 %', 0],
        ['50 %', 5],
        ['20 %', 60],
      ],
    };
    return {
      valve: random.chance(0.5) ? random.pick(VALVES) : own,
      ...(shut ? { open: '0 %' } : this.maybe('open', 0.5, () => this.measure(5, 100, '%'))),
    };
  }

  private appliance(): StepText {
    const { random } = this;
    const bands = {
      structural: {
        bands: [
          { from: '0 gpm', loss: '0 psi' },
          { from: '60 gpm', loss: '10 psi' },
        ],
      },
      wildland: { loss: '5 psi' },
      engineering: { k: 1, inside_diameter: '1.5 in' },
    };
    const own = random.chance(0.3) ? { policies: bands } : this.localLoss();
    return { appliance: random.chance(0.5) ? random.pick(APPLIANCES) : own };
  }

  private check(): StepText {
    return { check_valve: this.random.chance(0.5) ? this.random.pick(CHECKS) : this.localLoss() };
  }

  /** One step that leads on. */
  private onward(level = false): StepText {
    const { random } = this;
    const kind = random.integer(0, 9);
    if (kind < 4) return this.hose(level);
    if (kind < 6) return this.pipe();
    if (kind === 6) return this.valve();
    if (kind === 7) return this.appliance();
    if (kind === 8) return this.check();
    return { gauge: this.name('gauge') };
  }

  /** Plumbing that leads on, possibly none. */
  private through(most: number): StepText[] {
    const steps = Array.from({ length: this.random.integer(0, most) }, () => this.onward(true));
    if (steps.length > 0 && this.random.chance(0.7)) steps.unshift(this.pipe());
    if (this.options.tapped && this.random.chance(0.1)) steps.push(this.branch(2, 1));
    if (this.random.chance(0.1)) steps.push(this.siamese(1));
    return steps;
  }

  private siamese(depth: number): StepText {
    const line = (): StepText[] => {
      const steps = [this.hose(true), ...(this.random.chance(0.4) ? [this.onward(true)] : [])];
      if (depth > 1 && this.random.chance(0.3)) steps.push(this.siamese(depth - 1));
      return steps;
    };
    return { siamese: Array.from({ length: this.random.integer(2, 3) }, line) };
  }

  private branch(size: number, depth: number): StepText {
    const { random } = this;
    const count = random.integer(1, 3);
    return {
      branch: random.chance(0.6) ? random.pick(BRANCHES) : this.localLoss(),
      to: Array.from({ length: count }, () => ({
        name: this.name('lateral'),
        steps: this.line(Math.ceil(size / (count + 1)), depth - 1),
      })),
    };
  }

  private end(): StepText {
    const { random } = this;
    const kind = random.integer(0, 9);
    const name = this.name('nozzle');
    const state = random.chance(0.2) ? { state: 'shut' } : {};
    if (kind < 3) {
      const nozzle = {
        kind: 'smooth_bore',
        bore: this.measure(0.1, 1.2, 'in'),
        working: { from: '40 psi', to: '60 psi' },
      };
      return { nozzle, name, ...state };
    }
    if (kind < 5) {
      const nozzle = {
        kind: 'fog',
        flow: this.measure(5, 125, 'gpm'),
        pressure: this.measure(50, 100, 'psi'),
      };
      return { nozzle, name, ...state };
    }
    if (kind < 7) {
      const from = random.between(3, 40);
      const nozzle = {
        kind: 'automatic',
        pressure: this.measure(50, 100, 'psi'),
        flow_from: `${from} gpm`,
        flow_to: `${from * random.between(1.2, 8)} gpm`,
      };
      return { nozzle, name, ...state };
    }
    if (kind === 7) {
      const tee = this.maybe('tee_bore', 0.5, () => '1.5 in');
      return {
        nozzle: { kind: 'sharp_orifice', bore: this.measure(0.2, 0.8, 'in'), ...tee },
        name,
        ...state,
      };
    }
    return kind === 8 ? { open_end: true, name } : { cap: true };
  }

  /** A line of about so many steps, to an end of its own. */
  private line(size: number, depth: number): StepText[] {
    const { random } = this;
    const steps: StepText[] = random.chance(0.95) ? [this.hose()] : [];
    for (let left = size; left > 0; left--) {
      const kind = random.integer(0, 19);
      if (kind === 0) steps.push(this.siamese(2));
      else if (kind === 1)
        steps.push({ pump: this.pump(), name: this.name('booster'), throttle: this.measure(50, 100, '%') });
      else if (kind === 2 && random.chance(0.5)) {
        steps.push({ tank: '1,000 gal', name: this.name('tank') });
        if (random.chance(0.3)) return steps;
        steps.push({ pump: this.pump(), name: this.name('booster') }, this.hose());
      } else if (kind === 3) {
        steps.push({ repeat: random.integer(1, 3), steps: [this.hose(), { gauge: this.name('gauge {n}') }] });
      } else if (kind < 7 && depth > 0 && left > 1) {
        steps.push(this.branch(left, depth), this.hose());
      } else steps.push(this.onward());
    }
    steps.push(this.end());
    return steps;
  }
}

/** Every quantity of a document in units of the other system, exact to rounding. */
export function inSi(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(inSi);
  if (typeof value === 'object' && value !== null) {
    return Object.fromEntries(Object.entries(value).map(([key, inside]) => [key, inSi(inside)]));
  }
  if (typeof value !== 'string') return value;
  const found = /^(-?[\d,.]+(?:e-?\d+)?)(?:\/(\d+))? (ft|in|psi|gpm|gal|lb|degF|rpm)$/.exec(value);
  if (!found) return value;
  const number = Number(found[1].replaceAll(',', '')) / Number(found[2] ?? 1);
  const to: Record<string, (n: number) => string> = {
    ft: (n) => `${n * 0.3048} m`,
    in: (n) => `${n * 25.4} mm`,
    psi: (n) => `${n * 6.894757293168361} kPa`,
    gpm: (n) => `${n * 3.785411784} L/min`,
    gal: (n) => `${n * 3.785411784} L`,
    lb: (n) => `${n * 0.45359237} kg`,
    degF: (n) => `${((n - 32) * 5) / 9} degC`,
    rpm: () => value,
  };
  return to[found[3]](number);
}

/** The same document with the keys of every mapping in another order. */
export function reordered(value: unknown, random: Random): unknown {
  if (Array.isArray(value)) return value.map((inside) => reordered(inside, random));
  if (typeof value !== 'object' || value === null) return value;
  const entries = Object.entries(value).map(([key, inside]) => [key, reordered(inside, random)] as const);
  for (let i = entries.length - 1; i > 0; i--) {
    const j = random.integer(0, i);
    [entries[i], entries[j]] = [entries[j], entries[i]];
  }
  return Object.fromEntries(entries);
}
