import { shortOfLeast } from '../assembly/nozzle-needs.js';
import { grouped } from '../quantity/format.js';
import type { Caution } from './caution.js';
import type { Hazard, HazardCase } from './hazard.js';

/** Open nozzles that fall below their least pressure when the far line bursts or a pump drops out, and did not before. */
export const nozzleShort: Hazard = ({ cases }) => {
  const before = shortIn(cases.find(({ kind }) => kind === 'laid'));
  return cases.flatMap((one) => (one.kind === 'burst' || one.kind === 'one_out' ? inCase(one, before) : []));
};

function inCase({ kind, when, point, gone }: HazardCase, before: ReadonlySet<string>): Caution[] {
  const short = point.assembly.nozzles.flatMap((nozzle) => {
    const one = shortOfLeast(point, nozzle);
    if (one === undefined || nozzle.name === gone || before.has(nozzle.name)) return [];
    // Where water does not come up to an open nozzle, the air stands in it.
    return [{ nozzle, value: Math.max(0, one.pressure), least: one.least.pressure }];
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

/** The nozzles that are short as the lay stands. */
function shortIn(one: HazardCase | undefined): ReadonlySet<string> {
  const nozzles = one?.point.assembly.nozzles.filter((nozzle) => shortOfLeast(one.point, nozzle)) ?? [];
  return new Set(nozzles.map(({ name }) => name));
}
