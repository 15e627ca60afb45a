import { dirname, resolve } from 'node:path';
import { type Catalogue, loadCatalogue } from '../catalogue/load.js';
import { checkBores } from './bore-rules.js';
import { withoutSteps } from './hollow.js';
import type { Lay, Layout, Supply } from './layout.js';
import { type PlacedTerrain, readLine } from './lines.js';
import { grown, type Progressive } from './progressive.js';
import { type EngineRead, readEngine } from './read-engine.js';
import { readProgressive } from './read-progressive.js';
import { readTerrain } from './read-terrain.js';
import { type ReadText, readStandardInput, readTextFile } from './read-text.js';
import { readTyping } from './read-typing.js';
import { Reading } from './reading.js';
import { recognised, recognisedForEngine } from './recognise.js';
import { isMapping, whatStands } from './schema/choice.js';
import { type LayoutDocument, layoutSchema } from './schema/layout.js';
import { Spot } from './spot.js';
import { checkStaging, stagingOf, throttleOf } from './staging.js';
import type { Path } from './step.js';
import { YamlSource } from './yaml-source.js';

export interface ReadOptions {
  /** What ids are looked up in; the catalogue that ships, unless given. */
  catalogue?: Catalogue;
}

const STANDARD_INPUT = '-';

/**
 * Reads a layout from a file, or from standard input where the path is `-`. Throws `LayoutProblems` with everything
 * that is wrong in it and in the engine's file.
 */
export function readLayout(path: string, options: ReadOptions = {}): { layout: Layout } {
  const reading = new Reading(options.catalogue ?? loadCatalogue());
  const file = path === STANDARD_INPUT ? 'standard input' : path;
  const folder = path === STANDARD_INPUT ? process.cwd() : dirname(path);
  const read = path === STANDARD_INPUT ? readStandardInput() : readTextFile(path);
  const spot = open(file, read, [], reading);
  const layout = spot && readDocument(spot, folder, reading);
  if (!layout || reading.problems.any) throw reading.problems.toError();
  return { layout };
}

/** Reads a layout from text, as if it stood in `file`. */
export function readLayoutText(text: string, file: string, options: ReadOptions = {}): { layout: Layout } {
  const reading = new Reading(options.catalogue ?? loadCatalogue());
  const spot = open(file, { text }, [], reading);
  const layout = spot && readDocument(spot, dirname(file), reading);
  if (!layout || reading.problems.any) throw reading.problems.toError();
  return { layout };
}

/** A document as a mapping at its top; undefined where it is none, which is reported. */
function open(file: string, read: ReadText, prefix: string[], reading: Reading): Spot | undefined {
  if ('fault' in read) {
    if (read.text !== undefined && read.offset !== undefined) {
      reading.problems.add(YamlSource.faultAt(file, read.text, read.offset, read.fault, prefix));
    } else {
      reading.problems.add({ file, path: prefix, message: read.fault });
    }
    return undefined;
  }
  const source = new YamlSource(file, read.text, prefix);
  for (const problem of source.problems) reading.problems.add(problem);
  if (!source.readable) return undefined;
  const spot = new Spot(source, [], source.value, prefix);
  const inEngine = prefix.length > 0;
  const other = inEngine ? recognisedForEngine(source.value) : recognised(source.value);
  if (other) {
    reading.problems.add({
      file,
      path: prefix,
      message: `this is ${other.is}, and ${inEngine ? 'an engine' : 'a layout'} is wanted`,
      hint: other.goes.replaceAll('FILE', file),
    });
    return undefined;
  }
  if (isMapping(source.value)) return spot;
  return reading.report(spot, `${whatStands(source.value)} where a whole document is wanted`, {
    expected: 'a mapping of keys and values, for instance engine: engine.yaml',
  });
}

const STEPS = [['lay'], ['lay', '*'], ['supply', 'draft', 'suction']];

function readDocument(spot: Spot, folder: string, reading: Reading): Layout | undefined {
  const engineSpot = spot.child('engine');
  const elsewhere = typeof engineSpot?.value === 'string' || isMapping(engineSpot?.value);
  const value = withoutSteps(spot.value, STEPS) as Record<string, unknown>;
  // What grows is read by itself, so that one mistake does not hide another.
  const { progressive: _, ...still } = value;
  const hollow = elsewhere ? { ...still, engine: 'elsewhere' } : still;
  const data = reading.parse(layoutSchema, spot, hollow);
  const { policy, typing: asked, staging, terrain: points } = data ? partsOf(data) : wholeParts(hollow);
  reading.policy = policy ?? reading.policy;

  const files = [spot.source.file];
  const engine = elsewhere ? openEngine(engineSpot as Spot, folder, files, reading) : undefined;
  const read: EngineRead = engine ? readEngine(engine, reading) : {};
  const terrain = readTerrain(spot.child('terrain'), points, reading);
  const lay = readLay(spot.child('lay'), read, reading, terrain);
  const progressive = readProgressive(spot.child('progressive'), read.engine, lay, terrain, reading);
  const supply = readSupply(spot, data, reading);
  checkStaging(stagingOf(staging, read), spot, read, reading);
  const typing = readTyping(asked, spot.child('typing'), reading);
  if (!data || !read.engine || !supply) return undefined;
  const layout: Layout = {
    title: data.title ?? read.engine.name,
    site: data.site,
    engine: read.engine,
    staging: stagingOf(staging, read),
    throttle: throttleOf(data.throttle),
    supply,
    typing,
    appliance_policy: data.appliance_policy,
    surge: data.surge,
    lay: progressive ? withPlan(lay, progressive) : lay,
    progressive,
    shuttle: data.shuttle,
    files,
  };
  if (!reading.problems.any) checkBores(layout, (path) => locate(path, spot, engine), reading);
  return layout;
}

/** The lay with the whole plan in it, for the questions that ask of what lies on the ground. */
function withPlan(lay: readonly Lay[], plan: Progressive): Lay[] {
  const steps = grown(plan, { sections: plan.trunk.length });
  return [...lay.filter(({ outlet }) => outlet !== plan.outlet), { outlet: plan.outlet, steps }];
}

type Parts = Partial<Pick<LayoutDocument, 'typing' | 'staging' | 'terrain'>> & {
  policy?: LayoutDocument['appliance_policy'];
};

function partsOf({ appliance_policy: policy, typing, staging, terrain }: LayoutDocument): Parts {
  return { policy, typing, staging, terrain };
}

/** The parts of a layout that are right in themselves where another is wrong, so that they are looked into as well. */
function wholeParts(value: Record<string, unknown>): Parts {
  const { appliance_policy, typing, staging, terrain } = layoutSchema.shape;
  return {
    policy: appliance_policy.safeParse(value.appliance_policy).data,
    typing: typing.safeParse(value.typing).data,
    staging: staging.safeParse(value.staging).data,
    terrain: terrain.safeParse(value.terrain).data,
  };
}

/** What stands at a path of the layout, in the engine's own file where it has one. */
function locate(path: Path, spot: Spot, engine: Spot | undefined): Spot {
  const inEngine = engine !== undefined && path[0] === 'engine';
  return (inEngine ? path.slice(1) : path).reduce<Spot>(
    (at, key) => at.child(key) ?? at,
    inEngine ? engine : spot,
  );
}

/** The engine where it stands: in the layout, or in a file of its own beside it. */
function openEngine(spot: Spot, folder: string, files: string[], reading: Reading): Spot | undefined {
  if (typeof spot.value !== 'string') return spot;
  const path = resolve(folder, spot.value.trim());
  const read = readTextFile(path);
  if ('fault' in read && read.offset === undefined) {
    const shown = spot.value.length > 60 ? `${spot.value.slice(0, 57)}...` : spot.value;
    return reading.report(spot, `the engine's file ${shown} cannot be read: ${read.fault}`);
  }
  const file = engineFileName(spot, path);
  files.push(file);
  return open(file, read, ['engine'], reading);
}

/** Shown as the layout's own file is: relative where that is, so that a reader finds it from the same place. */
function engineFileName(spot: Spot, path: string): string {
  const written = (spot.value as string).trim();
  const base = spot.source.file.includes('/') ? `${dirname(spot.source.file)}/` : '';
  return resolve(`${base}${written}`) === path ? `${base}${written}` : path;
}

function readLay(
  spot: Spot | undefined,
  read: EngineRead,
  reading: Reading,
  terrain: PlacedTerrain | undefined,
): Lay[] {
  const outlets = read.outlets?.map(({ name }) => name);
  if (!spot) return [];
  if (!isMapping(spot.value)) {
    const outlet = outlets?.[0] ?? 'outlet';
    const steps = readLine(spot, outlet, 'lay', reading, terrain);
    if (outlets && outlets.length > 1 && spot.items().length > 0) {
      reading.report(
        spot,
        `the engine has the outlets ${outlets.join(', ')}; which of them does this lay start from?`,
        {
          key: true,
          hint: `write it under its name: lay: { ${outlets[0]}: [...] }`,
        },
      );
    }
    return spot.items().length === 0 ? [] : [{ outlet, steps }];
  }
  return spot.entries().map(([outlet, one]) => {
    if (outlets && !outlets.includes(outlet)) reportOutlet(one, outlet, outlets, reading);
    return { outlet, steps: readLine(one, outlet, 'lay', reading, terrain) };
  });
}

function reportOutlet(spot: Spot, outlet: string, outlets: readonly string[], reading: Reading): void {
  reading.report(spot, `the engine has no outlet ${outlet}`, {
    key: true,
    expected:
      outlets.length > 0
        ? `one of ${outlets.join(', ')}`
        : 'a list of steps, since the engine names no outlets',
  });
}

function readSupply(spot: Spot, data: LayoutDocument | undefined, reading: Reading): Supply | undefined {
  const draft = spot.child('supply')?.child('draft');
  const suction = readLine(draft?.child('suction'), 'suction hose', 'plumbing', reading);
  const at = draft?.child('strainer');
  const known = at && (typeof at.value === 'string' || isMapping(at.value));
  const strainer = known ? reading.model('appliance', at) : undefined;
  if (!data) return undefined;
  const { supply } = data;
  if (supply === 'tank') return { kind: 'tank' };
  if ('hydrant' in supply) return { kind: 'hydrant', ...supply.hydrant };
  if ('relay' in supply) return { kind: 'relay', ...supply.relay };
  if (!strainer) return { kind: 'draft', lift: supply.draft.lift, suction };
  const { model, ...modelled } = strainer;
  return { kind: 'draft', lift: supply.draft.lift, suction, strainer: { ...modelled, appliance: model } };
}
