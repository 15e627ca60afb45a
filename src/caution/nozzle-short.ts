import { leastPressure } from '../assembly/nozzle-needs.js';
import { grouped } from '../quantity/format.js';
import type { Caution } from './caution.js';
import type { Hazard, HazardCase } from './hazard.js';

/** Open nozzles that fall below their least pressure when the far line bursts or a pump drops out, and did not before. */
export const nozzleShort: Hazard = ({ cases }) => {
  const laid = pressures(cases.find(({ kind }) => kind === 'laid'));
  return cases.flatMap((one) => (one.kind === 'burst' || one.kind === 'one_out' ? inCase(one, laid) : []));
};

function inCase({ kind, when, point, gone }: HazardCase, laid: ReadonlyMap<string, number>): Caution[] {
  const short = point.assembly.nozzles.flatMap((nozzle) => {
    const least = leastPressure(nozzle);
    if (nozzle.state === 'shut' || nozzle.name === gone || least === undefined) return [];
    const before = laid.get(nozzle.name);
    if (before !== undefined && before < least) return [];
    // Where water does not come up to an open nozzle, the air stands in it.
    const value = Math.max(0, point.totalPressure(nozzle.inlet));
    return value < least ? [{ nozzle, value, least }] : [];
  });
  if (short.length === 0) return [];
  const worst = short.reduce((kept, one) => (one.value / one.least < kept.value / kept.least ? one : kept));
  const others = short.length - 1;
  const more =
    others === 0 ? '' : others === 1 ? '; so does 1 more nozzle' : `; so do ${grouped(others)} more nozzles`;
  return [
    {
      code: kind === 'burst' ? 'nozzle_short_when_burst' : 'nozzle_short_on_one_pump',
      level: 'note',
      at: worst.nozzle.name,
      value: { value: worst.value, dimension: 'pressure' },
      limit: { value: worst.least, dimension: 'pressure' },
      message: `{at} falls to {value} ${when}; it needs {limit}${more}`,
      action:
        kind === 'burst'
          ? 'Agree on a signal, keep a hose clamp at each wye, and shut the wye before the burst at once.'
          : 'Know which lines to shut first when a pump stops, so that the crew at the far end keeps its water.',
      source: 'working range or rating of the nozzle',
    },
  ];
}

/** What each nozzle has, Pa; of nozzles of one name the first. */
function pressures(one: HazardCase | undefined): ReadonlyMap<string, number> {
  const nozzles = one?.point.assembly.nozzles ?? [];
  return new Map(nozzles.toReversed().map(({ name, inlet }) => [name, one?.point.totalPressure(inlet) ?? 0]));
}
