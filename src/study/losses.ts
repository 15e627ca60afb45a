import type { Place } from '../assembly/network-builder.js';
import type { OperatingPoint } from '../assembly/operating-point.js';
import { STANDSTILL } from '../assembly/standstill.js';
import { pressureOfHeight } from '../physics/elevation.js';
import type { GaugePoint, Loss } from './answer.js';

/** Losses below this say nothing to a reader, Pa (0.01 psi). */
const WORTH_SAYING = 70;

/** Where the pressure goes between the water and a place, largest first; the height climbed is one of them. */
export function lossesTo(state: OperatingPoint, end: Place): Loss[] {
  const { assembly } = state;
  const losses: Loss[] = assembly.elements
    .filter(({ kind, link }) => kind !== 'pump' && Math.abs(state.flow(link)) > STANDSTILL)
    .map((element) => ({
      where:
        element.modelName && element.step?.name === undefined
          ? `${element.name}, ${element.modelName}`
          : element.name,
      kind: element.kind,
      flow: state.flow(element.link),
      loss: state.lossOf(element),
    }));
  const climbed = end.elevation - assembly.source.elevation;
  const height = pressureOfHeight(climbed, assembly.site.waterDensity);
  losses.push({ where: 'height from the water to the end', kind: 'elevation', flow: 0, loss: height });
  return losses.filter(({ loss }) => Math.abs(loss) > WORTH_SAYING).sort((a, b) => b.loss - a.loss);
}

/** What the gauges read: those that the layout names, the pumps' inlets and discharges, and the outlets. */
export function gaugePoints(state: OperatingPoint): GaugePoint[] {
  const { assembly } = state;
  const read = (name: string, place: Place): GaugePoint => ({
    name,
    pressure: state.gaugePressure(place),
    reads: state.readsStatic(place) ? 'static' : 'total',
    elevation: place.elevation,
    ...(place.link !== undefined && { flow: state.flow(place.link) }),
  });
  return [
    ...assembly.gauges.map(({ name, place }) => read(name, place)),
    ...assembly.pumps.flatMap((pump) => [
      read(`${pump.name}, inlet`, pump.inlet),
      read(`${pump.name}, discharge`, pump.discharge),
    ]),
    ...assembly.ends.map(({ name, place }) => read(name, place)),
  ];
}
