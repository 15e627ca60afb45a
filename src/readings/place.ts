import type { Path } from '../layout/step.js';
import type { YamlSource } from '../layout/yaml-source.js';
import type { Place } from './sheet.js';

/** A place of a YAML document that can be complained of. */
export const positionOf = (source: YamlSource, path: Path, key: boolean): Place => ({
  line: source.position(path).line,
  problem: (message, more) => source.problem(path, message, { ...more, key }),
});
