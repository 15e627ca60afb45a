import { isMap, isScalar, isSeq, type Node, type Pair, type Scalar } from 'yaml';

const START = /^[-+]?\d{1,3}$/;
const GROUP = /^\d{3}$/;
const LAST_GROUP = /^\d{3}(?:\.\d+)?\s*[^\d\s.,].*$/;

function plainSource(node: unknown): string | undefined {
  return isScalar(node) && node.type === 'PLAIN' && !node.tag ? (node.source ?? '') : undefined;
}

/**
 * Puts `1,000 ft` together again where it stands in brackets or braces, in which a comma parts YAML's entries:
 * `{ chassis: 11,900 lb }` says `chassis: 11` and a key `900 lb`. Only where no space follows the comma, three digits do,
 * and the last of them have a unit: anything else keeps YAML's own reading, and its problem.
 */
export function joinThousands(node: Node, text: string): void {
  if (isSeq(node) && node.flow) {
    node.items = joined(node.items as Node[], text, {
      value: (item) => item,
      rest: (item) => item,
    });
  }
  if (isMap(node) && node.flow) {
    node.items = joined(node.items as Pair[], text, {
      value: (pair) => pair.value,
      rest: (pair) => (pair.value === null || isBlank(pair.value) ? pair.key : undefined),
    });
  }
}

function isBlank(node: unknown): boolean {
  return isScalar(node) && node.value === null && (node.source ?? '') === '';
}

interface Access<T> {
  /** Where a number may begin. */
  value: (item: T) => unknown;
  /** Where it may go on. */
  rest: (item: T) => unknown;
}

function joined<T>(items: readonly T[], text: string, { value, rest }: Access<T>): T[] {
  const kept: T[] = [];
  for (let i = 0; i < items.length; i++) {
    kept.push(items[i]);
    const first = value(items[i]);
    if (!START.test(plainSource(first) ?? '')) continue;
    const groups: Scalar[] = [];
    let end = (first as Scalar).range?.[1] ?? -1;
    for (let next = i + 1; next < items.length; next++) {
      const group = rest(items[next]);
      const source = plainSource(group);
      const range = (group as Scalar | undefined)?.range;
      if (source === undefined || text[end] !== ',' || range?.[0] !== end + 1) break;
      if (!GROUP.test(source) && !LAST_GROUP.test(source)) break;
      groups.push(group as Scalar);
      end = range[1];
      if (LAST_GROUP.test(source)) {
        write(first as Scalar, groups);
        i = next;
        break;
      }
    }
  }
  return kept;
}

function write(first: Scalar, groups: readonly Scalar[]): void {
  const end = groups.at(-1)?.range;
  const source = [first, ...groups].map((part) => part.source).join(',');
  first.value = source;
  first.source = source;
  if (first.range && end) first.range = [first.range[0], end[1], end[2]];
}
