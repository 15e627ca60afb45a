import type { StagingName } from '../assembly/assembly.js';
import type { HazardCase } from '../caution/hazard.js';
import { governed } from './governor.js';
import type { Rig } from './rig.js';

/** The layout with its lay: as it stands, and with every nozzle shut. */
export function laidCases(rig: Rig, staging: StagingName): HazardCase[] {
  if (rig.layout.lay.length === 0) return [];
  const point = governed(rig, staging);
  return [
    { kind: 'laid', when: 'with the lay as it stands', point },
    {
      kind: 'laid_shut',
      when: 'with every nozzle of the lay shut',
      point: governed(rig, staging, () => 'shut'),
    },
  ];
}
