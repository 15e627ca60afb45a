import type { ProblemList } from '../layout/problem.js';
import type { Path } from '../layout/step.js';
import { YamlSource } from '../layout/yaml-source.js';
import { positionOf } from './place.js';
import { type Kinds, reportUnknown } from './read-csv.js';
import { type Cell, type Place, plainName, type Sheet, type SheetRow } from './sheet.js';

const isMapping = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** A sheet out of YAML: its settings as keys, `readings:` a list of mappings. Undefined where it has none; that is reported. */
export function readYamlSheet(
  file: string,
  text: string,
  kinds: Kinds,
  problems: ProblemList,
): Sheet | undefined {
  const source = new YamlSource(file, text);
  for (const problem of source.problems) problems.add(problem);
  if (!source.readable) return undefined;
  const placeOf = (path: Path, key = false): Place => positionOf(source, path, key);
  const { value } = source;
  const readings = isMapping(value) ? value.readings : undefined;
  if (!isMapping(value) || !Array.isArray(readings) || !readings.every(isMapping)) {
    problems.add(
      placeOf(isMapping(value) && 'readings' in value ? ['readings'] : [], true).problem(
        'no list of readings is found',
        {
          expected: `readings: [{ ${kinds.columns
            .slice(0, 2)
            .map(({ name, example }) => `${name}: ${yamlExample(example)}`)
            .join(', ')} }, ...]`,
        },
      ),
    );
    return undefined;
  }
  const settings = new Map<string, Cell>();
  for (const [key, given] of Object.entries(value)) {
    if (key === 'readings') continue;
    const setting = kinds.settings.find(({ name, also = [] }) => [name, ...also].includes(plainName(key)));
    if (setting === undefined) reportUnknown(key, placeOf([key], true), kinds.settings, problems, 'key');
    else settings.set(setting.name, { text: textOf(given), place: placeOf([key]) });
  }
  const columns = new Map<string, Place>();
  const rows = readings.map((reading: Record<string, unknown>, index): SheetRow => {
    const cells = new Map<string, Cell>();
    for (const [key, given] of Object.entries(reading)) {
      const path = ['readings', index, key];
      const column = kinds.columns.find(({ name, also = [] }) => [name, ...also].includes(plainName(key)));
      if (column === undefined) {
        reportUnknown(key, placeOf(path, true), kinds.columns, problems, 'key');
        continue;
      }
      if (!columns.has(column.name)) columns.set(column.name, placeOf(path, true));
      if (given !== null) cells.set(column.name, { text: textOf(given), place: placeOf(path) });
    }
    return { place: placeOf(['readings', index]), cells };
  });
  return { file, settings, columns, rows, head: placeOf(['readings'], true) };
}

const textOf = (value: unknown): string =>
  typeof value === 'object' && value !== null ? JSON.stringify(value) : String(value);

/** `flow gpm` is a header; in YAML a figure stands before the unit. */
const yamlExample = (example: string): string => `100 ${example.split(' ').slice(1).join(' ')}`;
