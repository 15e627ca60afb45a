import type { Staging, Throttle } from './layout.js';
import type { EngineRead } from './read-engine.js';
import type { Reading } from './reading.js';
import { isMapping } from './schema/choice.js';
import type { LayoutDocument } from './schema/layout.js';
import type { Spot } from './spot.js';

/** Side by side where there are two pumps and nothing is said. */
export function stagingOf(staging: Staging | undefined, { pumps }: EngineRead): Staging {
  return staging ?? (pumps?.includes('b') ? 'parallel' : 'a');
}

/** Governed speed unless something else is said. */
export function throttleOf(throttle: LayoutDocument['throttle'] = 1): Throttle {
  if (typeof throttle === 'number') return { by: 'speed', a: throttle, b: throttle };
  if ('discharge_pressure' in throttle) return { by: 'discharge_pressure', ...throttle };
  const { a = 1, b = 1 } = throttle as { a?: number; b?: number };
  return { by: 'speed', a, b };
}

/** Reports a staging that asks for a pump the engine lacks, or for outlets that say whose they are. */
export function checkStaging(staging: Staging, spot: Spot, read: EngineRead, reading: Reading): void {
  const at = spot.child('staging') ?? spot;
  const lacksB = read.pumps?.includes('a') && !read.pumps.includes('b');
  if (lacksB && staging !== 'a') {
    reading.report(at, `${staging} needs pump b, and the engine has none`, {
      hint: 'add pump b under pumps, or write staging: a',
    });
  }
  const throttle = spot.child('throttle');
  if (
    isMapping(throttle?.value) &&
    throttle.child('b') &&
    read.pumps?.length === 1 &&
    read.pumps[0] === 'a'
  ) {
    reading.report(throttle, 'a throttle for pump b, and the engine has none', { within: ['b'], key: true });
  }
  if (staging === 'separate' && read.outlets) checkSeparate(at, read.outlets, reading);
}

function checkSeparate(at: Spot, outlets: NonNullable<EngineRead['outlets']>, reading: Reading): void {
  const nobodys = outlets.filter(({ pump }) => pump === undefined);
  for (const { name, spot } of nobodys) {
    reading.report(spot, `the pumps work apart, and outlet ${name} does not say whose it is`, {
      key: true,
      hint: `write ${name}: { pump: a, steps: [...] }`,
    });
  }
  for (const pump of ['a', 'b']) {
    if (nobodys.length === 0 && !outlets.some((outlet) => outlet.pump === pump)) {
      reading.report(at, `the pumps work apart, and pump ${pump} has no outlet`, {
        hint: `name one under outlets: { left: { pump: ${pump} } }`,
      });
    }
  }
}
