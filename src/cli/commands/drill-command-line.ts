import type { SheetOptions } from './drill-options.js';

const PLAIN_WORD = /^[\w./:@%+,-]+$/;

/** As a shell reads it back. */
const quoted = (word: string): string =>
  PLAIN_WORD.test(word) ? word : `'${word.replaceAll("'", "'\\''")}'`;

/** The command line that makes a sheet again; it stands on the sheet, and leads the form for its answers. */
export function commandFor(options: SheetOptions): string {
  const { topics, level, count, seed, rules, units, choices, layout, blueprint, version } = options;
  const words = [
    ...(blueprint !== undefined
      ? ['--blueprint', blueprint]
      : topics.length > 0
        ? ['--topic', topics.join(',')]
        : ['--mix']),
    ...['--level', String(level)],
    ...(blueprint === undefined ? ['--count', String(count)] : []),
    ...['--seed', String(seed)],
    ...(version === undefined ? [] : ['--versions', version]),
    ...['--rules', rules, '--units', units],
    ...(choices > 0 ? ['--choices', String(choices)] : []),
    ...(layout === undefined ? [] : ['--layout', layout]),
  ];
  return `pumpyoke drill ${words.map(quoted).join(' ')}`;
}

/** The words of a line as `commandFor` quotes them. */
function wordsOf(line: string): string[] {
  const words: string[] = [];
  for (const [, bare, inside] of line.matchAll(/((?:'[^']*'|\\'|[^\s'])+)|('[^']*$)/g)) {
    words.push(
      (bare ?? inside).replace(/'([^']*)'|\\(')/g, (_, text?: string, sign?: string) => text ?? sign ?? ''),
    );
  }
  return words;
}

/** Read back, whatever else a spreadsheet has done to the line; undefined where it is no such line. */
export function optionsIn(line: string): Partial<SheetOptions> | undefined {
  const words = wordsOf(line);
  const at = words.indexOf('drill');
  if (at < 0) return undefined;
  const found: Partial<SheetOptions> = {};
  for (let i = at + 1; i < words.length; i++) {
    const value = words[i + 1];
    switch (words[i]) {
      case '--mix':
        found.topics = [];
        continue;
      case '--topic':
        found.topics = value?.split(',');
        break;
      case '--level':
      case '--count':
      case '--seed':
      case '--choices':
        if (!/^\d+$/.test(value ?? '')) return undefined;
        found[words[i].slice(2) as 'level' | 'count' | 'seed' | 'choices'] = Number(value);
        break;
      case '--blueprint':
        found.blueprint = value;
        break;
      case '--versions':
        if (!/^[A-Z]$/.test(value ?? '')) return undefined;
        found.version = value;
        break;
      case '--rules':
        found.rules = value;
        break;
      case '--units':
        if (value !== 'us' && value !== 'si') return undefined;
        found.units = value;
        break;
      case '--layout':
        found.layout = value;
        break;
      default:
        return undefined;
    }
    i++;
  }
  return found;
}
