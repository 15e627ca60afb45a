/** Less than this much hose past the last point is rounding, m. */
const SLACK = 1e-6;

/**
 * Height of the ground by distance along it, from the engine on. Hose lies along the ground, so that a length of hose
 * is a length of ground. Heights run straight from point to point.
 */
export class Terrain {
  /** How far along the ground somebody asked, m. */
  reached = 0;
  readonly length: number;
  private readonly points: readonly (readonly [distance: number, height: number])[];

  constructor(points: readonly (readonly [number, number])[]) {
    this.points = points;
    this.length = points[points.length - 1][0];
  }

  /** Whether a height was asked for beyond the last point. */
  get tooShort(): boolean {
    return this.reached > this.length + SLACK;
  }

  rise(from: number, to: number): number {
    this.reached = Math.max(this.reached, from, to);
    return this.height(to) - this.height(from);
  }

  /** The points of the terrain that lie between two distances, not at them. */
  between(from: number, to: number): readonly (readonly [distance: number, height: number])[] {
    return this.points.filter(([distance]) => distance > from + SLACK && distance < to - SLACK);
  }

  height(distance: number): number {
    const { points } = this;
    let low = 0;
    let high = points.length - 1;
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (points[middle][0] <= distance) low = middle;
      else high = middle;
    }
    const [start, bottom] = points[low];
    const [end, top] = points[high];
    const part = Math.min(1, (distance - start) / (end - start));
    return bottom + part * (top - bottom);
  }
}

/** A point of the ground under a length of hose. */
export interface GroundPoint {
  /** Part of the hose's length that lies before it. */
  along: number;
  /** m over the hose's start. */
  height: number;
}

/** Where a line lies on the terrain: it starts at a distance and takes `scale` of ground for each metre of hose. */
export class Ground {
  private readonly terrain: Terrain;
  private readonly scale: number;
  private distance: number;

  constructor(terrain: Terrain, distance = 0, scale = 1) {
    this.terrain = terrain;
    this.distance = distance;
    this.scale = scale;
  }

  /** Goes on by a length of hose; gives the height gained where it is asked for, and the ground in between. */
  advance(length: number, wantsRise: boolean): { rise: number; ground: GroundPoint[] } {
    const from = this.distance;
    this.distance += length * this.scale;
    if (!wantsRise) return { rise: 0, ground: [] };
    const start = this.terrain.height(from);
    const ground = this.terrain.between(from, this.distance).map(([distance, height]) => ({
      along: (distance - from) / (this.distance - from),
      height: height - start,
    }));
    return { rise: this.terrain.rise(from, this.distance), ground };
  }

  /** The ground under one of several lines that part here and meet again after the shortest of them. */
  underLine(length: number, shortest: number): Ground {
    return new Ground(this.terrain, this.distance, length > 0 ? (this.scale * shortest) / length : 0);
  }
}
