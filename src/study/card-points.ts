import type { Place } from '../assembly/network-builder.js';
import type { OperatingPoint } from '../assembly/operating-point.js';
import type { Layout } from '../layout/layout.js';
import type { Step } from '../layout/step.js';

/** A point of the trunk that a crew can find: a wye, a pump, a tank, the end. */
export interface CardPoint {
  name: string;
  /** Hose from the outlet, m. */
  distance: number;
  height: number;
  /** What a gauge reads there, Pa, at a nozzle its nozzle pressure; undefined where it cannot be told. */
  flowing?: number;
  shut?: number;
}

/** Ground within this of a point is marked by it, m. */
const MARKED = 1;

/** Follows a line step by step in one solved state. */
class Walk {
  private readonly state: OperatingPoint;
  private readonly behind = new Map<Step, Place>();
  private readonly boosters = new Map<string, Place>();
  private place: Place | undefined;

  constructor(state: OperatingPoint, outlet: string) {
    this.state = state;
    const { elements, pumps, outlets } = state.assembly;
    for (const { step, to } of elements) if (step) this.behind.set(step, to);
    for (const { name, discharge } of pumps) this.boosters.set(name, discharge);
    this.place = outlets.find(({ name }) => name === outlet)?.place;
  }

  get height(): number | undefined {
    return this.place?.elevation;
  }

  past(step: Step): void {
    this.place = this.placeBehind(step) ?? this.place;
  }

  private placeBehind(step: Step): Place | undefined {
    if (step.kind === 'pump') return this.boosters.get(step.label);
    if (step.kind !== 'siamese') return this.behind.get(step);
    const end = step.siamese[0].map((one) => this.placeBehind(one)).findLast((place) => place !== undefined);
    // Two bores meet here, so that none tells the velocity at the joint.
    return end && { ...end, bore: undefined };
  }

  pressure(at: Step['kind']): number | undefined {
    if (this.place === undefined) return undefined;
    return at === 'nozzle' ? this.state.totalPressure(this.place) : this.state.gaugePressure(this.place);
  }
}

/** Along the main line: where it parts, where a pump or a tank stands, and where it ends. */
export function pointsOf(
  { outlet, steps }: Pick<Layout['lay'][number], 'outlet' | 'steps'>,
  point: OperatingPoint,
  shut: OperatingPoint | undefined,
): CardPoint[] {
  const points: CardPoint[] = [];
  const flowing = new Walk(point, outlet);
  const still = shut && new Walk(shut, outlet);
  let distance = 0;
  let height = flowing.height ?? 0;
  let ground: { highest: CardPoint; lowest: CardPoint } | undefined;
  const here = (name: string, at: Step['kind']): CardPoint => ({
    name,
    distance,
    height,
    flowing: flowing.pressure(at),
    shut: still?.pressure(at),
  });
  for (const step of steps) {
    const found = ['branch', 'pump', 'tank', 'gauge', 'nozzle', 'open_end', 'cap'].includes(step.kind);
    if (found) points.push(here(step.label, step.kind));
    flowing.past(step);
    still?.past(step);
    if (step.kind === 'hose') {
      distance += step.length;
      height += step.rise;
      const end = here('', step.kind);
      ground ??= { highest: end, lowest: end };
      if (height > ground.highest.height) ground.highest = end;
      if (height < ground.lowest.height) ground.lowest = end;
    } else if (step.kind === 'siamese') {
      const [line] = step.siamese;
      distance += line.reduce((sum, one) => sum + (one.kind === 'hose' ? one.length : 0), 0);
      height += line.reduce((sum, one) => sum + ('rise' in one ? one.rise : 0), 0);
    }
  }
  const last = points.at(-1);
  if (last === undefined || last.distance !== distance) points.push(here('end of the line', 'hose'));
  return ground ? withGround(points, ground) : points;
}

/** The highest and the lowest ground that no wye marks: a ridge or a dip between them. */
function withGround(
  points: readonly CardPoint[],
  { highest, lowest }: { highest: CardPoint; lowest: CardPoint },
): CardPoint[] {
  const heights = points.map(({ height }) => height);
  const all = [...points];
  if (highest.height > Math.max(...heights) + MARKED) all.push({ ...highest, name: 'highest ground' });
  if (lowest.height < Math.min(...heights, 0) - MARKED) all.push({ ...lowest, name: 'lowest ground' });
  return all.sort((a, b) => a.distance - b.distance);
}
