import type { Branch } from '../catalogue/schema/appliance.js';
import type { Hose } from '../catalogue/schema/hose.js';
import type { Pump } from '../catalogue/schema/pump.js';
import { withArticle } from '../quantity/article.js';
import type { Draft } from './draft.js';
import { withoutModels, withoutSteps } from './hollow.js';
import type { Engine, Lay } from './layout.js';
import { type PlacedTerrain, readLine } from './lines.js';
import type { BoosterPlan, Progressive } from './progressive.js';
import { readSteps } from './read-steps.js';
import type { Reading } from './reading.js';
import { isMapping } from './schema/choice.js';
import { type ProgressiveDocument, progressiveSchema } from './schema/progressive.js';
import type { Spot } from './spot.js';
import type { BranchStep, HoseStep, Modelled, Step } from './step.js';
import { Ground, Terrain } from './terrain.js';

const STEPS = [['lateral', 'steps'], ['end']];
const MODELS = [['trunk', 'hose'], ['lateral', 'branch'], ['booster', 'pump'], ['bigger_trunk']];

/** What a trunk is laid of where it is to be bigger and the layout does not say: the next size of double jacket or supply hose. */
const BIGGER: readonly { upTo: number; id: string }[] = [
  { upTo: 0.0254 * 1.4, id: 'forestry-1.5' },
  { upTo: 0.0254 * 2.4, id: 'double-jacket-2.5' },
  { upTo: 0.0254 * 3.9, id: 'supply-4' },
];

/** Reads how a lay grows; `lay` holds what is laid before it, and is lengthened to the whole plan. */
export function readProgressive(
  spot: Spot | undefined,
  engine: Engine | undefined,
  lay: Lay[],
  terrain: PlacedTerrain | undefined,
  reading: Reading,
): Progressive | undefined {
  if (!spot) return undefined;
  const data = reading.parse(progressiveSchema, spot, withoutModels(withoutSteps(spot.value, STEPS), MODELS));
  if (!isMapping(spot.value)) return undefined;
  const laterals = spot.child('lateral');
  const branch = reading.modelAt('branch', laterals?.child('branch'));
  const steps = readLine(laterals?.child('steps'), 'lateral {n}', 'branch line', reading);
  const end = readLine(spot.child('end'), 'the head of the lay', 'branch line', reading);
  const trunkSpot = spot.child('trunk');
  const hose = reading.modelAt('hose', trunkSpot?.child('hose'));
  const pump = reading.modelAt('pump', spot.child('booster')?.child('pump'));
  const bigger = reading.modelAt('hose', spot.child('bigger_trunk'));
  checkLateral(laterals, steps, reading);
  if (!data || !engine || !hose || !trunkSpot) return undefined;
  const outlet = outletOf(data, spot, engine, lay, reading);
  const base = lay.find((one) => one.outlet === outlet)?.steps ?? [];
  const trunk = sections(data, trunkSpot, base, terrain, reading);
  const last = base.at(-1);
  if (last && ['nozzle', 'open_end', 'cap'].includes(last.kind)) {
    reading.report(
      spot,
      `the lay ends in ${withArticle(last.kind.replace('_', ' '))}, so that nothing can grow from it`,
      {
        key: true,
        hint: 'end `lay` in hose, in a tank with its pump, or leave it out',
      },
    );
  }
  if (data.lateral && !branch) return undefined;
  const lateral = data.lateral &&
    branch && {
      every: data.lateral.every,
      branch: branchStep(branch, laterals as Spot, reading),
      steps,
      flowing: data.lateral.flowing,
    };
  return {
    outlet,
    base,
    trunk,
    lateral,
    end: end.length > 0 ? named(end) : [{ kind: 'cap', label: 'closed head of the trunk', ...spot.placed() }],
    pace: data.pace,
    booster: boosterOf(data, pump, engine),
    bigger: bigger ? asTrunk(bigger) : biggerThan(hose.model, reading),
    ...spot.placed(),
  };
}

/** The end's only nozzle is the far nozzle, unless it has a name. */
function named(end: Step[]): Step[] {
  const sole = end.filter(({ kind }) => kind === 'nozzle').length === 1;
  return end.map((step) =>
    sole && step.kind === 'nozzle' && step.name === undefined ? { ...step, label: 'far nozzle' } : step,
  );
}

function outletOf(
  data: ProgressiveDocument,
  spot: Spot,
  engine: Engine,
  lay: readonly Lay[],
  reading: Reading,
): string {
  const names = engine.outlets.map(({ name }) => name);
  const { outlet } = data;
  if (outlet === undefined) {
    if (names.length > 1) {
      reading.report(
        spot,
        `the engine has the outlets ${names.join(', ')}; which of them does this lay grow from?`,
        {
          key: true,
          hint: `write outlet: ${names[0]}`,
        },
      );
    }
    return names[0] ?? lay[0]?.outlet ?? 'outlet';
  }
  if (!names.includes(outlet) && (names.length > 0 || outlet !== 'outlet')) {
    reading.report(spot, `the engine has no outlet ${outlet}`, {
      within: ['outlet'],
      ...(names.length > 0
        ? { expected: `one of ${names.join(', ')}` }
        : { hint: 'leave it out: the engine names none' }),
    });
  }
  return outlet;
}

function sections(
  data: ProgressiveDocument,
  spot: Spot,
  base: readonly Step[],
  terrain: PlacedTerrain | undefined,
  reading: Reading,
): HoseStep[] {
  // The step's own rules on a rise and a length are those of any hose.
  const drafts: Draft[] = readSteps(listOf(spot), reading);
  const template = drafts[0]?.step;
  if (template?.kind !== 'hose') return [];
  const ground = terrain && new Terrain(terrain.points);
  const under = ground && new Ground(ground, groundLength(base));
  const found: HoseStep[] = [];
  for (let section = 1; section <= data.sections; section++) {
    const level = template.riseBasis === 'level';
    const over = under?.advance(template.length, level);
    const label = `section ${section}`;
    const step: HoseStep = { ...template, name: label, label };
    found.push(over && level ? { ...step, ...over, riseBasis: 'terrain' } : step);
  }
  if (ground?.tooShort && terrain) {
    reading.report(spot, `the terrain ends before the plan of ${data.sections} sections does`, {
      key: true,
      hint: 'add a point further on to the terrain, plan fewer sections, or give the trunk a rise of its own',
    });
  }
  return found;
}

/** A mapping as a list of it alone. */
function listOf(spot: Spot): Spot {
  return Object.create(spot, { items: { value: () => [spot] } });
}

/** Ground that a main line takes; of lines that part and meet again the shortest. */
function groundLength(steps: readonly Step[]): number {
  return steps.reduce((sum, step) => {
    if (step.kind === 'hose') return sum + step.length;
    return step.kind === 'siamese' ? sum + Math.min(...step.siamese.map(groundLength)) : sum;
  }, 0);
}

function branchStep(branch: Modelled & { model: Branch }, spot: Spot, reading: Reading): BranchStep {
  const { model, ...modelled } = branch;
  return {
    kind: 'branch',
    ...modelled,
    branch: model,
    policy: reading.policy,
    to: [],
    label: 'wye',
    ...spot.placed(),
  };
}

function checkLateral(spot: Spot | undefined, steps: readonly Step[], reading: Reading): void {
  const list = spot?.child('steps');
  if (!list || list.items().length === 0) return;
  const last = steps.at(-1);
  if (!last || ['nozzle', 'open_end', 'cap', 'branch'].includes(last.kind)) return;
  reading.report(list, 'the lateral stops here, open or shut', { hint: 'end it with a nozzle' });
}

function boosterOf(
  { booster }: ProgressiveDocument,
  pump: (Modelled & { model: Pump }) | undefined,
  engine: Engine,
): BoosterPlan {
  const own = engine.pumps.b ?? engine.pumps.a;
  const chosen = pump
    ? { id: pump.id, modelName: pump.modelName, pump: pump.model }
    : { id: own.id, modelName: own.modelName, pump: own.model };
  return { ...chosen, throttle: booster.throttle, intake: booster.intake };
}

function asTrunk({ id, modelName, model }: Modelled & { model: Hose }): Progressive['bigger'] {
  return { id, modelName, hose: model };
}

function biggerThan(hose: Hose, reading: Reading): Progressive['bigger'] {
  const next = BIGGER.find(({ upTo }) => hose.inside_diameter < upTo);
  const found = next && reading.catalogue.find('hose', next.id);
  return next && found ? { id: next.id, modelName: found.name ?? next.id, hose: found } : undefined;
}
