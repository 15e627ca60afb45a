import { pressuresAlong } from '../assembly/along-hose.js';
import type { AssembledNozzle } from '../assembly/assembly.js';
import { leastPressure } from '../assembly/nozzle-needs.js';
import type { OperatingPoint } from '../assembly/operating-point.js';
import { lateralsOn, type Progressive, sectionOf } from '../layout/progressive.js';
import { whyImpossible } from '../limits/impossible.js';
import type { AdvanceStep, HighestHose, LimitMet } from './advance-answer.js';
import { totalFlow } from './always-run.js';
import type { GrowingLay, LaidOut } from './growing-lay.js';
import { pressureLimits } from './lay-limits.js';
import { fittingsUsed, hoseUsed } from './lay-stores.js';
import { LayPaths } from './paths.js';

/** A step of an advance, but for what its water is: that hangs on the steps before it. */
export function stepAt(lay: GrowingLay, laid: LaidOut): AdvanceStep {
  const { plan } = lay;
  const { point, sections } = laid;
  const layout = lay.layoutAt(sections);
  const end = lay.sectionEnd(sections);
  const own = point.assembly.pumps.filter(({ booster }) => !booster);
  return {
    section: sections,
    impossible: whyImpossible(point),
    distance: distanceTo(plan, sections),
    height: end.elevation,
    laterals: lateralsOn(plan, sections),
    lateralsOpen: lateralsOpen(laid),
    totalFlow: totalFlow(point),
    pumpPressure: Math.max(...own.map(({ discharge }) => point.gaugePressure(discharge))),
    headPressure: point.totalPressure(end),
    farNozzle: farNozzle(laid),
    hoseFlowing: highest(laid, 'flowing'),
    hoseShut: highest(laid, 'shut'),
    hose: hoseUsed(layout),
    fittings: fittingsUsed(layout),
    limits: pressureLimits(lay, laid),
  };
}

/** Hose from the outlet to the end of a section, m. */
export function distanceTo({ base, trunk }: Progressive, sections: number): number {
  const before = base.reduce((sum, step) => {
    if (step.kind === 'hose') return sum + step.length;
    if (step.kind !== 'siamese') return sum;
    const lines = step.siamese.map((line) =>
      line.reduce((length, one) => length + (one.kind === 'hose' ? one.length : 0), 0),
    );
    return sum + Math.min(...lines);
  }, 0);
  return trunk.slice(0, sections).reduce((sum, { length }) => sum + length, before);
}

function lateralsOpen({ nozzles }: LaidOut): number {
  const open = nozzles.filter(({ path, state }) => path[1] === 'lateral' && state === 'open');
  return new Set(open.map(({ step }) => sectionOf(step))).size;
}

/** The open nozzle at the head; where it has none, the open one with the most hose before it. */
export function farNozzle({ point, nozzles }: LaidOut): AdvanceStep['farNozzle'] {
  const open = nozzles.filter(({ state }) => state === 'open');
  const far =
    open.find(({ path }) => path[0] === 'progressive' && path[1] === 'end') ?? farthest(point, open);
  if (far === undefined) return undefined;
  const flow = far.link === undefined ? 0 : Math.max(0, point.flow(far.link));
  return { name: far.name, flow, pressure: point.totalPressure(far.inlet), least: leastPressure(far) };
}

function farthest(point: OperatingPoint, open: readonly AssembledNozzle[]): AssembledNozzle | undefined {
  const paths = new LayPaths(point.assembly);
  let kept: { nozzle: AssembledNozzle; length: number } | undefined;
  for (const nozzle of open) {
    const length = paths.hoseTo(nozzle.inlet);
    if (kept === undefined || length >= kept.length) kept = { nozzle, length };
  }
  return kept?.nozzle;
}

function highest({ point, shut, hose }: LaidOut, state: LimitMet['state']): HighestHose {
  let kept: HighestHose | undefined;
  for (const element of hose) {
    const pressure = pressuresAlong(state === 'shut' ? shut : point, element).highest;
    if (kept === undefined || pressure > kept.pressure) kept = { at: element.name, pressure };
  }
  if (kept === undefined) throw new TypeError('a progressive lay without hose passed its schema');
  return kept;
}
