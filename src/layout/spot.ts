import { isMapping } from './schema/choice.js';
import type { Path, Position } from './step.js';
import type { YamlSource } from './yaml-source.js';

/** A value of a document with where it stands. */
export class Spot {
  readonly source: YamlSource;
  /** Within its own file. */
  readonly path: Path;
  readonly value: unknown;
  /** Where its file hangs in the layout. */
  private readonly prefix: Path;

  constructor(source: YamlSource, path: Path, value: unknown, prefix: Path = []) {
    this.source = source;
    this.path = path;
    this.value = value;
    this.prefix = prefix;
  }

  /** What stands under a key or index; undefined where nothing does. */
  child(key: string | number): Spot | undefined {
    const { value } = this;
    if (typeof value !== 'object' || value === null || !Object.hasOwn(value, key)) return undefined;
    const inside = (value as Record<string | number, unknown>)[key];
    return new Spot(this.source, [...this.path, key], inside, this.prefix);
  }

  items(): Spot[] {
    return Array.isArray(this.value) ? this.value.map((_, index) => this.child(index) as Spot) : [];
  }

  entries(): [string, Spot][] {
    return isMapping(this.value) ? Object.keys(this.value).map((key) => [key, this.child(key) as Spot]) : [];
  }

  /** Where it stands in the layout, its files taken as one. */
  placed(): { path: Path; at: Position } {
    return { path: [...this.prefix, ...this.path], at: this.source.position(this.path) };
  }
}
