import { closeId } from '../catalogue/ids.js';
import { nearest } from '../quantity/nearest.js';
import { withoutModels, withoutSteps } from './hollow.js';
import type { CarriedHose, Engine, EnginePump, Outlet, PumpName, Weight } from './layout.js';
import { readLine } from './lines.js';
import type { Reading } from './reading.js';
import { isMapping } from './schema/choice.js';
import { type EngineDocument, engineSchema } from './schema/engine.js';
import type { Spot } from './spot.js';
import type { Step } from './step.js';

const STEPS = [
  ['plumbing', 'intake'],
  ['plumbing', 'suction'],
  ['plumbing', 'suction', '*'],
  ['plumbing', 'discharge'],
  ['plumbing', 'discharge', '*'],
  ['plumbing', 'transfer'],
  ['plumbing', 'manifold'],
  ['outlets', '*'],
  ['outlets', '*', 'steps'],
];
const MODELS = [
  ['pumps', '*', 'model'],
  ['hose_carried', '*', 'hose'],
];

/** What the rest of the layout can ask of an engine even where the engine has problems of its own. */
export interface EngineRead {
  engine?: Engine;
  /** Undefined where the pumps could not be made out. */
  pumps?: PumpName[];
  /** Undefined where the outlets could not be made out. */
  outlets?: { name: string; pump?: unknown; spot: Spot }[];
}

export function readEngine(spot: Spot, reading: Reading): EngineRead {
  const data = reading.parse(engineSchema, spot, withoutModels(withoutSteps(spot.value, STEPS), MODELS));
  if (!isMapping(spot.value)) return {};
  const pumps = readPumps(spot.child('pumps'), data, reading);
  const plumbing = readPlumbing(spot.child('plumbing'), reading);
  const outlets = readOutlets(spot.child('outlets'), reading);
  const hoseCarried = readHoseCarried(spot.child('hose_carried'), data, reading);
  checkFittingsCarried(spot.child('fittings_carried'), reading);
  const engine: Engine | undefined = data &&
    pumps?.a && {
      name: data.name,
      tank: data.tank,
      pumps: { a: pumps.a, b: pumps.b },
      plumbing: { ...plumbing, cooling: data.plumbing?.cooling },
      relief: data.relief,
      outlets,
      hose_carried: hoseCarried,
      fittings_carried: fittingsCarried(data, reading),
      crew: data.crew,
      gross_weight_rating: data.gross_weight_rating,
      wheelbase: data.wheelbase,
      axle_ratings: data.axle_ratings,
      one_larger_pump: data.one_larger_pump,
      weights: weightsOf(data),
    };
  const named = spot.child('outlets');
  return {
    engine,
    pumps: (['a', 'b'] as const).filter((name) => spot.child('pumps')?.child(name)),
    outlets:
      named && !isMapping(named.value)
        ? undefined
        : (named?.entries().map(([name, one]) => ({ name, pump: one.child('pump')?.value, spot: one })) ??
          []),
  };
}

function readPumps(
  spot: Spot | undefined,
  data: EngineDocument | undefined,
  reading: Reading,
): Partial<Record<PumpName, EnginePump>> {
  const found: Partial<Record<PumpName, EnginePump>> = {};
  for (const name of ['a', 'b'] as const) {
    const one = spot?.child(name);
    const model = one?.child('model');
    if (!one || !model || !(typeof model.value === 'string' || isMapping(model.value))) continue;
    const read = reading.model('pump', model);
    const given = data?.pumps[name];
    if (read && given) {
      found[name] = { ...given, ...read, ...one.placed() };
      checkServiced(one.child('serviced'), found[name], reading);
    }
  }
  return found;
}

/** A service done has to be one that the pump's own file names, at hours that the pump has run. */
function checkServiced(
  spot: Spot | undefined,
  { model, serviced, hours }: EnginePump,
  reading: Reading,
): void {
  const names = Object.keys(model.service ?? {});
  for (const [service, at] of spot?.entries() ?? []) {
    if (!names.includes(service)) {
      const close = nearest(service, names);
      reading.report(at, `the pump names no service ${service}`, {
        key: true,
        expected: close === undefined && names.length > 0 ? `one of ${names.join(', ')}` : undefined,
        hint: close === undefined ? undefined : `did you mean ${close}?`,
      });
    }
    const done = serviced?.[service]?.at;
    const stated = at.child('at');
    if (stated && done !== undefined && hours !== undefined && done > hours)
      reading.report(stated, 'serviced at more hours than the pump has run');
  }
}

function readPlumbing(spot: Spot | undefined, reading: Reading) {
  const line = (at: Spot | undefined, group: string): Step[] => readLine(at, group, 'plumbing', reading);
  return {
    intake: line(spot?.child('intake'), 'intake'),
    suction: readEachPump(spot?.child('suction'), 'suction', line),
    discharge: readEachPump(spot?.child('discharge'), 'discharge', line),
    transfer: line(spot?.child('transfer'), 'transfer'),
    manifold: line(spot?.child('manifold'), 'manifold'),
  };
}

/** One list stands for each pump's own; both are the same pipework twice over. */
function readEachPump(
  spot: Spot | undefined,
  group: string,
  line: (at: Spot | undefined, group: string) => Step[],
): Record<PumpName, Step[]> {
  const own = (name: PumpName) => line(isMapping(spot?.value) ? spot.child(name) : spot, `${group} ${name}`);
  return { a: own('a'), b: own('b') };
}

function readOutlets(spot: Spot | undefined, reading: Reading): Outlet[] {
  return (spot?.entries() ?? []).map(([name, one]) => {
    const steps = isMapping(one.value) ? one.child('steps') : one;
    const pump = one.child('pump')?.value;
    return {
      name,
      ...(pump === 'a' || pump === 'b' ? { pump } : {}),
      steps: readLine(steps, `outlet ${name}`, 'plumbing', reading),
      ...one.placed(),
    };
  });
}

function readHoseCarried(
  spot: Spot | undefined,
  data: EngineDocument | undefined,
  reading: Reading,
): CarriedHose[] | undefined {
  if (!spot) return undefined;
  return spot.items().flatMap((item, index) => {
    const hose = item.child('hose');
    if (!hose || !(typeof hose.value === 'string' || isMapping(hose.value))) return [];
    const read = reading.model('hose', hose);
    const given = data?.hose_carried?.[index];
    if (!read || !given) return [];
    const { model, ...modelled } = read;
    return [{ hose: model, ...modelled, length: given.length, ...item.placed() }];
  });
}

/** By the ids of the data files, whichever way their sizes are spelt. */
function fittingsCarried(
  { fittings_carried: given }: EngineDocument,
  { catalogue }: Reading,
): Record<string, number> | undefined {
  if (!given) return undefined;
  const carried: Record<string, number> = {};
  for (const [word, count] of Object.entries(given)) {
    const kind = COUNTED.find((one) => catalogue.idOf(one, word) !== undefined);
    const id = (kind && catalogue.idOf(kind, word)) ?? word;
    carried[id] = (carried[id] ?? 0) + count;
  }
  return carried;
}

/** Kinds that are counted by the piece. */
const COUNTED = ['branch', 'nozzle', 'appliance', 'valve', 'check_valve'] as const;

function checkFittingsCarried(spot: Spot | undefined, reading: Reading): void {
  for (const [id, at] of spot?.entries() ?? []) {
    if (COUNTED.some((kind) => reading.catalogue.idOf(kind, id) !== undefined)) continue;
    const close = closeId(
      id,
      COUNTED.flatMap((kind) => reading.catalogue.ids(kind)),
    );
    reading.report(at, `the catalogue has no branch, nozzle, appliance or valve ${id}`, {
      key: true,
      hint: close === undefined ? undefined : `did you mean ${close}?`,
    });
  }
}

function weightsOf(data: EngineDocument): Weight[] {
  return Object.entries(data.weights ?? {}).map(([name, given]) =>
    typeof given === 'number' ? { name, weight: given } : { name, ...given },
  );
}
