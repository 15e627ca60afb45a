import { type Alias, isAlias, isMap, isScalar, isSeq, type Node, type Pair, type Scalar } from 'yaml';
import { grouped } from '../quantity/format.js';
import { joinThousands } from './thousands.js';

export interface PlainDocument {
  value: unknown;
  /** False where the values could not be taken apart: a circle, or copies without end. */
  readable: boolean;
  aliases: Map<Alias, Node>;
}

interface Options {
  text: string;
  mostLevels: number;
  lineOf: (offset: number) => number;
  fault: (node: Node, message: string, hint?: string) => void;
}

/** Values of a document with its copies (`*name`) counted as often as they stand. */
const MOST_VALUES = 200_000;

/** A value with how many values and levels it has once every copy is written out. */
interface Sized {
  value: unknown;
  values: number;
  levels: number;
}

const EMPTY: Sized = { value: null, values: 1, levels: 0 };

/**
 * The nodes of a document as plain values. A node is turned once however often it is referred to, so that copies of
 * copies cost no time here, and their number is known before anyone walks them.
 */
export function plainDocument(root: Node, options: Options): PlainDocument {
  const reader = new PlainReader(options);
  const { value, values, levels } = reader.read(root);
  if (values > MOST_VALUES) {
    options.fault(root, `more than ${grouped(MOST_VALUES)} values once its copies are written out`);
    reader.readable = false;
  }
  if (levels > options.mostLevels) {
    options.fault(root, `nested deeper than ${options.mostLevels} levels once its copies are written out`);
    reader.readable = false;
  }
  return { value, readable: reader.readable, aliases: reader.aliases };
}

class PlainReader {
  readonly aliases = new Map<Alias, Node>();
  readable = true;
  private readonly options: Options;
  private readonly anchors = new Map<string, Node>();
  private readonly done = new Map<Node, Sized>();

  constructor(options: Options) {
    this.options = options;
  }

  read(node: Node | null): Sized {
    if (node === null) return EMPTY;
    if (isAlias(node)) return this.copy(node);
    if ('anchor' in node && node.anchor) this.anchors.set(node.anchor, node);
    const sized = this.readOwn(node);
    this.done.set(node, sized);
    return sized;
  }

  private readOwn(node: Node): Sized {
    joinThousands(node, this.options.text);
    if (isScalar(node)) return { value: this.scalar(node), values: 1, levels: 0 };
    if (isSeq(node)) {
      const items = node.items.map((item) => this.read(item as Node | null));
      return sum(
        items.map(({ value }) => value),
        items,
      );
    }
    return isMap(node) ? this.mapping(node.items as Pair[]) : EMPTY;
  }

  private copy(alias: Alias): Sized {
    const target = this.anchors.get(alias.source);
    if (!target) {
      this.options.fault(
        alias,
        `*${alias.source} copies something that is not named &${alias.source} before it`,
      );
      this.readable = false;
      return EMPTY;
    }
    this.aliases.set(alias, target);
    const sized = this.done.get(target);
    if (!sized) {
      this.options.fault(alias, `*${alias.source} stands within what it copies, so it has no end`);
      this.readable = false;
      return EMPTY;
    }
    return sized;
  }

  private mapping(pairs: Pair[]): Sized {
    const value: Record<string, unknown> = {};
    const parts: Sized[] = [];
    const first = new Map<string, Node>();
    for (const pair of pairs) {
      const key = pair.key as Node;
      const part = this.read(pair.value as Node | null);
      const name = isScalar(key) ? String(key.value ?? '') : '';
      if (!this.acceptKey(key, name, first.get(name))) continue;
      first.set(name, key);
      parts.push(part);
      value[name] = part.value;
    }
    return sum(value, parts);
  }

  private acceptKey(key: Node, name: string, earlier: Node | undefined): boolean {
    const { fault, lineOf } = this.options;
    if (earlier) {
      fault(
        key,
        `${name} is here twice; the first is on line ${lineOf(earlier.range?.[0] ?? 0)}`,
        'keep one of them',
      );
      return false;
    }
    if (name === '__proto__') {
      fault(key, '__proto__ cannot be a name', 'give it another name');
      return false;
    }
    if (name === '<<') {
      fault(
        key,
        '<< (merging of mappings) is not read here',
        'write the keys out, or copy the whole with *name',
      );
      return false;
    }
    if (name === '') {
      fault(key, 'a key is missing before this colon');
      return false;
    }
    return true;
  }

  private scalar(node: Scalar): unknown {
    const source = node.source ?? '';
    if (typeof node.value === 'number' && node.type === 'PLAIN' && /^[-+]?0\d/.test(source)) {
      const plain = String(node.value);
      this.options.fault(
        node,
        `${source} starts with a zero, which some programs read as octal`,
        `write ${plain}`,
      );
    }
    return node.value;
  }
}

function sum(value: unknown, parts: readonly Sized[]): Sized {
  let values = 1;
  let levels = 0;
  for (const part of parts) {
    values += part.values;
    levels = Math.max(levels, part.levels);
  }
  return { value, values, levels: levels + 1 };
}
