import { expect, test } from 'vitest';
import type { Assembly } from '../../src/assembly/assembly.js';
import { hoseLength, LayPaths, trunkOf } from '../../src/study/paths.js';
import { Rig } from '../../src/study/rig.js';
import { engine, FAR_FOG, lay, layoutOf } from './support.js';

async function assembled(sections: Parameters<typeof lay>[0], more = ''): Promise<Assembly> {
  const rig = await Rig.of(layoutOf(engine(more) + lay(sections, FAR_FOG)));
  return rig.assemble({ staging: 'parallel', lay: 'whole' });
}

/** The same assembly, counting how often it is asked where a part comes from. */
function counting(assembly: Assembly): { assembly: Assembly; asked: () => number } {
  let asked = 0;
  const elements = assembly.elements.map((element) => {
    const { from } = element;
    return Object.defineProperty({ ...element }, 'from', {
      get: () => {
        asked += 1;
        return from;
      },
    });
  });
  return { assembly: { ...assembly, elements }, asked: () => asked };
}

test('every nozzle of a long lay is placed by looking at each part a few times, not once for each nozzle', async () => {
  const laterals = 400;
  const long = await assembled(
    Array.from({ length: laterals }, () => ({ feet: 100, lateral: { feet: 100, gpm: 20 } })),
  );
  const { assembly, asked } = counting(long);
  const paths = new LayPaths(assembly);
  expect(assembly.nozzles.map((nozzle) => paths.outletOf(nozzle))).toEqual(
    Array.from({ length: laterals + 1 }, () => 'left'),
  );
  expect(paths.farthest(assembly.nozzles)?.name).toBe('far');
  expect(asked()).toBeLessThan(10 * assembly.elements.length);
});

test('the far nozzle is at the end of the longest trunk, and not on the longest lateral', async () => {
  const assembly = await assembled([
    { feet: 200, lateral: { feet: 900, gpm: 20 } },
    { feet: 300, lateral: { feet: 100, gpm: 20 } },
    { feet: 100 },
  ]);
  const paths = new LayPaths(assembly);
  const far = paths.farthest(assembly.nozzles);
  expect(far?.name).toBe('far');
  const path = paths.to(far?.inlet ?? assembly.intake);
  expect(hoseLength(path) / 0.3048).toBeCloseTo(600, 6);
  expect(trunkOf(path)).toEqual(path);
});

test('of nozzles on laterals alone the far one is on the wye with the most trunk before it', async () => {
  const assembly = await assembled([
    { feet: 200, lateral: { feet: 900, gpm: 20 } },
    { feet: 300, lateral: { feet: 100, gpm: 20 } },
  ]);
  const paths = new LayPaths(assembly);
  const laterals = assembly.nozzles.filter(({ name }) => name !== 'far');
  expect(paths.farthest(laterals)?.name).toBe('nozzle 2');
});

test('the way to a nozzle beyond a portable tank runs on through the tank', async () => {
  const rig = await Rig.of(
    layoutOf(`${engine()}lay:
  left:
    - {hose: {inside_diameter: 1.5 in, coefficient: 24}, length: 100 ft}
    - {tank: 1000 gal}
    - {pump: {name: booster, points: [[0 gpm, 400 psi], [50 gpm, 350 psi], [100 gpm, 200 psi]]}}
    - {nozzle: {kind: fog, flow: 20 gpm, pressure: 100 psi}, name: beyond}
`),
  );
  const assembly = rig.assemble({ staging: 'parallel', lay: 'whole' });
  const paths = new LayPaths(assembly);
  const [beyond] = assembly.nozzles.filter(({ name }) => name === 'beyond');
  expect(paths.to(beyond.inlet).map(({ kind }) => kind)).toEqual(['hose', 'tank', 'pump']);
  expect(paths.outletOf(beyond)).toBe('left');
});
