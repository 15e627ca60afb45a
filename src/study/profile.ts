import type { Element } from '../assembly/network-builder.js';
import type { OperatingPoint } from '../assembly/operating-point.js';
import type { ProfileAnswer } from './field-answer.js';
import { groundLine } from './ground-line.js';
import { hoseLength, isHose, LayPaths } from './paths.js';

/** A point this much above both ends of a line is a ridge, m (3 ft); less is the roughness of the ground. */
const RIDGE = 0.9;

/** How the line to the far nozzle of each outlet lies on the ground. */
export function profiles(state: OperatingPoint): ProfileAnswer[] {
  const paths = new LayPaths(state.assembly);
  return state.assembly.outlets.flatMap(({ name, place }) => {
    const nozzles = state.assembly.nozzles.filter((nozzle) => paths.outletOf(nozzle) === name);
    const open = nozzles.filter((nozzle) => nozzle.state === 'open');
    const far = paths.farthest(open.length > 0 ? open : nozzles);
    if (far === undefined) return [];
    const path = paths.to(far.inlet);
    const points = groundLine(state, path);
    if (points.length === 0) return [];
    const highest = points.reduce((kept, one) => (one.height > kept.height ? one : kept));
    const lowest = points.reduce((kept, one) => (one.height < kept.height ? one : kept));
    const ends = Math.max(place.elevation, far.inlet.elevation);
    return [
      {
        outlet: name,
        to: far.name,
        hose: hoseLength(path),
        onMap: path.reduce((sum, element) => sum + onMap(element), 0),
        climb: far.inlet.elevation - place.elevation,
        highest,
        lowest,
        overRidge: highest.height > ends + RIDGE,
        takenLevel: path.reduce((sum, element) => sum + takenLevel(element), 0),
      },
    ];
  });
}

/** Level distance that a length of hose covers, from one turn of the ground to the next. */
function onMap(element: Element): number {
  const { step, length = 0 } = element;
  if (step?.kind !== 'hose') return 0;
  const turns = [...(step.ground ?? []), { along: 1, height: step.rise }];
  let covered = 0;
  let before = { along: 0, height: 0 };
  for (const turn of turns) {
    const slope = (turn.along - before.along) * length;
    const height = turn.height - before.height;
    covered += Math.sqrt(Math.max(0, slope * slope - height * height));
    before = turn;
  }
  return covered;
}

function takenLevel(element: Element): number {
  const { step, length = 0 } = element;
  return isHose(element) && step?.kind === 'hose' && step.riseBasis === 'level' ? length : 0;
}
