import type { Layout } from '../layout/layout.js';
import type { Step } from '../layout/step.js';
import type { LinkLaw } from '../network/network.js';
import type { Assembly, NamedPlace, StagingName } from './assembly.js';
import { layEngine, type StoppedPump, type Throttle } from './engine.js';
import { type LineContext, layLine } from './line.js';
import { NetworkBuilder } from './network-builder.js';
import type { PartStore } from './part-store.js';
import { laySupply } from './supply.js';

/** An outlet into the air that hangs on an end, beside what the layout has. */
export interface HungOutlet {
  end: string;
  law: LinkLaw;
}

export interface AssembleOptions {
  staging: StagingName;
  throttle: Throttle;
  store: PartStore;
  /** What hangs on the outlets: the layout's own lay, nothing, or the lay up to the nozzle that it ends in. */
  lay: 'whole' | 'none' | 'to_end';
  /** Whether a nozzle is open, whatever the layout says. */
  nozzleState?: LineContext['nozzleState'];
  /** A pump that stands still with its valves open. */
  stopped?: StoppedPump;
  hung?: HungOutlet;
}

/** Makes a layout into a network. */
export function assemble(layout: Layout, options: AssembleOptions): Assembly {
  const { staging, throttle, store, nozzleState } = options;
  const { site } = store;
  const builder = new NetworkBuilder();
  const laid = { pumps: [], nozzles: [], gauges: [], reliefs: [], coolers: [] };
  const context: LineContext = { builder, site, store, laid, nozzleState };
  const supply = laySupply(layout, context);
  const { source } = supply;
  const { intake, outlets } = layEngine(layout, staging, throttle, supply, context, options.stopped);
  let ends = outlets;
  if (options.lay !== 'none') {
    for (const lay of layout.lay) {
      const outlet = outlets.find(({ name }) => name === lay.outlet) ?? outlets[0];
      const steps = options.lay === 'whole' ? lay.steps : withoutEnd(lay.steps);
      const group = layout.lay.length > 1 ? `lay of ${outlet.name}` : 'the lay';
      const end = layLine(steps, outlet.place, group, context);
      if (options.lay === 'to_end' && end) ends = [{ name: `the end of ${group}`, place: end }];
    }
  }
  const hung = options.hung && hang(options.hung, ends, builder);
  const { network, elements } = builder;
  return { staging, network, site, elements, ...laid, outlets, ends, intake, source, hung };
}

/** Hangs an outlet on an end, and gives its link. */
function hang({ end, law }: HungOutlet, ends: readonly NamedPlace[], builder: NetworkBuilder): number {
  const found = ends.find(({ name }) => name === end);
  if (found === undefined) throw new TypeError(`there is no end ${end} to hang an outlet on`);
  const air = builder.surface(`air at ${end}`, found.place.elevation);
  return builder.link(`outlet at ${end}`, found.place, air, law, true);
}

/** A lay without the nozzle that it ends in. */
function withoutEnd(steps: readonly Step[]): Step[] {
  return steps.slice(
    0,
    steps.findLastIndex((step) => step.kind === 'nozzle'),
  );
}
