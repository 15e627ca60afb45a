import { applianceLoss } from '../catalogue/schema/appliance.js';
import type { LocalLoss } from '../catalogue/schema/local-loss.js';
import { localLoss } from '../catalogue/schema/local-loss.js';
import { CRANE_BORES } from '../physics/crane-fitting.js';
import { toUnit } from '../quantity/units.js';
import type { Layout, PumpName } from './layout.js';
import type { Reading } from './reading.js';
import type { Spot } from './spot.js';
import type { ApplianceStep, Step } from './step.js';

/** Where in the layout a line hangs, so that a step that has a problem can be found again. */
type Locate = (path: Step['path']) => Spot;

/**
 * Reports every part that loses velocity heads in a bore that is nowhere stated: its loss cannot be worked out. The bore
 * is that of the part, or of the step before it; none is known after a pump without one, an open tank, or where lines meet.
 */
export function checkBores(layout: Layout, locate: Locate, reading: Reading): void {
  const { plumbing, pumps, outlets } = layout.engine;
  const check = (steps: readonly Step[], bore?: number) => checkLine(steps, bore, locate, reading);
  const drafted = checkSupply(layout, locate, reading);
  const intake = check(plumbing.intake, drafted);
  const discharge = (name: PumpName) => {
    check(plumbing.suction[name], intake);
    return check(plumbing.discharge[name], pumps[name]?.model.outlet_bore);
  };
  const ends: Record<PumpName, number | undefined> = { a: discharge('a'), b: discharge('b') };
  check(plumbing.transfer);
  const manifold = check(plumbing.manifold, pumps.b ? undefined : ends.a);
  // Pumps that work apart have no manifold between them and their outlets; every other staging has.
  const apart = layout.staging === 'separate';
  const after = (pump: PumpName | undefined) =>
    apart && pump && ends[pump] === undefined ? undefined : manifold;
  const outletEnds = new Map(outlets.map(({ name, pump, steps }) => [name, check(steps, after(pump))]));
  for (const { outlet, steps } of layout.lay)
    check(steps, outlets.length === 0 ? manifold : outletEnds.get(outlet));
}

/** Bore at the end of the suction hose, and what its strainer needs. */
function checkSupply(layout: Layout, locate: Locate, reading: Reading): number | undefined {
  if (layout.supply.kind !== 'draft') return undefined;
  const { suction } = layout.supply;
  const strainer = strainerOf(layout);
  return checkLine(
    suction,
    strainer && checkStep(strainer, firstBore(suction), locate, reading),
    locate,
    reading,
  );
}

/** The strainer of a draft as the step that it is: the first that water meets. */
export function strainerOf({ supply, appliance_policy, files }: Layout): ApplianceStep | undefined {
  if (supply.kind !== 'draft' || supply.strainer === undefined) return undefined;
  return {
    ...supply.strainer,
    kind: 'appliance',
    policy: appliance_policy,
    label: 'strainer',
    path: ['supply', 'draft', 'strainer'],
    at: { file: files[0], line: 1, column: 1 },
  };
}

/** Bore of the hose or pipe that water meets first, m; undefined where a line has none. */
export function firstBore(steps: readonly Step[]): number | undefined {
  const first = steps.find((step) => step.kind === 'hose' || step.kind === 'pipe');
  return first?.kind === 'hose' ? first.hose.inside_diameter : first?.pipe.inside_diameter;
}

/** Bore at the end of a line that starts in `bore`. */
function checkLine(
  steps: readonly Step[],
  bore: number | undefined,
  locate: Locate,
  reading: Reading,
): number | undefined {
  let now = bore;
  for (const step of steps) now = checkStep(step, now, locate, reading);
  return now;
}

/** Reports a bore for which the tables of fittings are not made. */
function checkCraneBore(step: Step, bore: number, locate: Locate, reading: Reading): void {
  if (bore >= CRANE_BORES.from && bore <= CRANE_BORES.to) return;
  const inches = (size: number) => `${Number(toUnit(size, 'in').toPrecision(3))} in`;
  const { from, to } = CRANE_BORES;
  reading.report(
    locate(step.path),
    `what its fittings lose is known for bores from ${inches(from)} to ${inches(to)}, and this one is ${inches(bore)}`,
    { key: true, hint: 'give the fitting a k or a loss of its own, as measured' },
  );
}

function checkStep(
  step: Step,
  before: number | undefined,
  locate: Locate,
  reading: Reading,
): number | undefined {
  const need = (bore: number | undefined, loss: LocalLoss | undefined, partOpen = false) => {
    if (bore !== undefined && loss?.law === 'friction_multiple') checkCraneBore(step, bore, locate, reading);
    const inBore = loss?.law === 'k' || loss?.law === 'friction_multiple' || partOpen;
    if (!inBore || bore !== undefined) return;
    reading.report(
      locate(step.path),
      `${'modelName' in step ? step.modelName : step.label} loses velocity heads in a bore that is not known here`,
      {
        key: true,
        hint: 'put a hose or pipe before it, or give it an inside_diameter',
      },
    );
  };
  switch (step.kind) {
    case 'hose':
      return step.hose.inside_diameter;
    case 'pipe': {
      const bore = step.pipe.inside_diameter;
      for (const { fitting } of step.fittings) need(fitting.inside_diameter ?? bore, localLoss(fitting));
      return bore;
    }
    case 'valve': {
      const bore = step.valve.inside_diameter ?? before;
      need(bore, localLoss(step.valve), step.open < 1);
      return bore;
    }
    case 'check_valve': {
      const bore = step.check_valve.inside_diameter ?? before;
      need(bore, localLoss(step.check_valve));
      return bore;
    }
    case 'appliance': {
      const bore = step.appliance.inside_diameter ?? before;
      need(bore, applianceLoss(step.appliance, step.policy));
      return bore;
    }
    case 'branch': {
      const bore = step.branch.inside_diameter ?? before;
      need(bore, applianceLoss(step.branch, step.policy));
      for (const line of step.to) checkLine(line.steps, bore, locate, reading);
      return bore;
    }
    case 'siamese':
      for (const line of step.siamese) checkLine(line, before, locate, reading);
      return undefined;
    case 'pump':
      return step.pump.outlet_bore;
    case 'tank':
      return undefined;
    case 'open_end':
      if (before === undefined) {
        reading.report(
          locate(step.path),
          'an open end is as wide as the step before it, and no bore is known here',
          {
            key: true,
            hint: 'put a hose or pipe before it',
          },
        );
      }
      return before;
    default:
      return before;
  }
}
