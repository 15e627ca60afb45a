import type { OperatingPoint } from '../assembly/operating-point.js';
import type { Layout } from '../layout/layout.js';
import { hydrantFlow } from '../physics/hydrant.js';
import { attainableLift, theoreticalLift } from '../physics/npsh.js';
import {
  INTAKE_FLOOR,
  INTAKE_FLOOR_SOURCE,
  RELAY_RELIEF_OVER,
  RELAY_RELIEF_SOURCE,
} from '../physics/relay.js';
import type { PortableTankAnswer, SupplyAnswer } from './field-answer.js';

const FLOOR = { pressure: INTAKE_FLOOR, source: INTAKE_FLOOR_SOURCE };

/** Where the engine's water comes from, what it draws, and how its intake stands. */
export function supplyOf(layout: Layout, state: OperatingPoint): SupplyAnswer {
  const { supply } = layout;
  const { assembly } = state;
  const common = {
    flow: drawnFrom(state, assembly.source.node),
    intake: state.totalPressure(assembly.intake),
  };
  switch (supply.kind) {
    case 'tank':
      return { kind: 'tank', ...common };
    case 'draft': {
      const theoretical = theoreticalLift(assembly.site.atmosphericPressure, assembly.site.waterDensity);
      return {
        kind: 'draft',
        ...common,
        draft: {
          lift: supply.lift,
          theoreticalLift: theoretical,
          attainableLift: attainableLift(theoretical),
        },
      };
    }
    case 'hydrant': {
      const { static: still, residual, flow } = supply;
      const test = { staticPressure: still, residualPressure: residual, flow };
      const known = still > residual && still >= INTAKE_FLOOR;
      return {
        kind: 'hydrant',
        ...common,
        floor: FLOOR,
        hydrant: {
          static: still,
          residual,
          flow,
          atFloor: known ? hydrantFlow(test, INTAKE_FLOOR) : undefined,
        },
      };
    }
    case 'relay':
      return {
        kind: 'relay',
        ...common,
        floor: FLOOR,
        relay: {
          pressure: supply.pressure,
          reliefAt: supply.pressure + RELAY_RELIEF_OVER,
          relief: supply.relief,
          source: RELAY_RELIEF_SOURCE,
        },
      };
  }
}

/** Open tanks in the line, with what runs into each and what is drawn from it. */
export function portableTanks(state: OperatingPoint): PortableTankAnswer[] {
  return state.assembly.elements.flatMap((element) => {
    const { step, to, link } = element;
    if (step?.kind !== 'tank') return [];
    const inflow = state.flow(link);
    return [{ name: element.name, capacity: step.tank, inflow, outflow: drawnFrom(state, to.node) + inflow }];
  });
}

/** Net flow out of a water surface, m3/s. */
export function drawnFrom(state: OperatingPoint, node: number): number {
  return state.assembly.network.links.reduce((sum, link, index) => {
    if (link.from === node) return sum + state.flow(index);
    return link.to === node ? sum - state.flow(index) : sum;
  }, 0);
}
