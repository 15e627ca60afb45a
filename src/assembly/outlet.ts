import { type AutomaticNozzle as Automatic, boreOf, type Nozzle } from '../catalogue/schema/nozzle.js';
import type { NozzleStep, OpenEndStep } from '../layout/step.js';
import type { LinkLaw } from '../network/network.js';
import { REFERENCE_WATER_DENSITY } from '../physics/constants.js';
import { AutomaticNozzle } from '../physics/nozzle/automatic.js';
import { fogResistance } from '../physics/nozzle/fog.js';
import { openEndResistance } from '../physics/nozzle/open-end.js';
import { jetResistance } from '../physics/nozzle/orifice.js';
import { smoothBoreResistance } from '../physics/nozzle/smooth-bore.js';
import { velocityHead } from '../physics/velocity.js';
import type { AssembledNozzle } from './assembly.js';
import { laminarFlow, quadratic } from './laws.js';
import type { LineContext } from './line.js';
import type { Place } from './network-builder.js';
import type { Site } from './site.js';

/** Lays the end of a line: a nozzle, open or shut, or an open end. */
export function outletOf(
  step: NozzleStep | OpenEndStep,
  inlet: Place,
  context: LineContext,
): AssembledNozzle {
  const name = step.label;
  const common = { name, inlet, path: step.path, step };
  const stated = step.kind === 'nozzle' ? step.state : 'open';
  const state = context.nozzleState?.(name, stated) ?? stated;
  const model = step.kind === 'nozzle' ? step.nozzle : ({ kind: 'open_end' } as const);
  const modelName = step.kind === 'nozzle' ? step.modelName : 'open end';
  if (state === 'shut') {
    seep(inlet, context);
    return { ...common, model, modelName, state };
  }
  const air = context.builder.surface(`air at ${name}`, inlet.elevation);
  const law = model.kind === 'open_end' ? openEndLaw(inlet, context.site) : nozzleLaw(model, context.site);
  // No nozzle draws air in: where the line stands below the nozzle it runs dry instead.
  const link = context.builder.link(name, inlet, air, law, true);
  return { ...common, model, modelName, state, link };
}

/**
 * What drips from a closed end, m3/s: a drop in ten minutes. Without it water behind check valves would be trapped, and any
 * pressure over that of the pumps would do as well as theirs.
 */
const SEEPS = 1e-10;

/** Lays a closed end: its pressure is then that of what feeds it. */
export function seep({ node }: Place, { builder }: LineContext): void {
  builder.nodes[node].demand = SEEPS;
}

/** The law of a nozzle from the total pressure before it to the air. */
export function nozzleLaw(nozzle: Nozzle, site: Site): LinkLaw {
  switch (nozzle.kind) {
    case 'smooth_bore': {
      const bore = boreOf(nozzle);
      return quadratic(smoothBoreResistance(bore, nozzle.discharge_coefficient), laminarFlow(bore, site));
    }
    case 'fog':
      return quadratic(fogResistance(nozzle.flow, nozzle.pressure));
    case 'automatic':
      return { kind: 'curve', curve: automatic(nozzle, site) };
    default: {
      // The gauge in the tee reads static pressure, to which the velocity head there is added.
      const jet = jetResistance(nozzle.bore, nozzle.discharge_coefficient);
      const tee = nozzle.tee_bore === undefined ? 0 : velocityHead(1, nozzle.tee_bore);
      return quadratic(jet + tee, laminarFlow(nozzle.bore, site));
    }
  }
}

/** Its spring holds a pressure and not a head, whatever the water weighs. */
function automatic({ pressure, flow_from, flow_to }: Automatic, { waterDensity }: Site): AutomaticNozzle {
  return new AutomaticNozzle((pressure * REFERENCE_WATER_DENSITY) / waterDensity, flow_from, flow_to);
}

function openEndLaw(inlet: Place, site: Site): LinkLaw {
  if (inlet.bore === undefined)
    throw new TypeError('an open end has the bore of the step before, and none is known');
  return quadratic(
    openEndResistance(inlet.bore) / inlet.lines ** 2,
    laminarFlow(inlet.bore, site) * inlet.lines,
  );
}
