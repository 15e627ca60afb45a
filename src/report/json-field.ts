import type { UnitSystem } from '../quantity/format.js';
import type {
  CaseAnswer,
  HabitAnswer,
  PortableTankAnswer,
  ProfileAnswer,
  SiteConditions,
  SupplyAnswer,
} from '../study/answer.js';
import { impossibleTree } from './impossible.js';
import { orNull } from './json-tree.js';
import { of } from './required.js';
import { noState, reasonTree, standingTree } from './standing.js';

export const habitTree = ({ outlet, flow, hose, actual, endToEnd }: HabitAnswer) => ({
  outlet,
  flow: of('flow', flow),
  hose: of('length', hose),
  friction: of('pressure', actual),
  friction_end_to_end: of('pressure', endToEnd),
});

function groundPointTree(
  { name, distance, height, pressure, flow }: ProfileAnswer['highest'],
  site: SiteConditions,
) {
  const none = noState(pressure, site, flow);
  return {
    name,
    distance: of('length', distance),
    height: of('length', height),
    pressure: standingTree(none, pressure),
    reason: reasonTree(none),
  };
}

export const profileTree = (profile: ProfileAnswer, site: SiteConditions) => ({
  outlet: profile.outlet,
  to: profile.to,
  hose: of('length', profile.hose),
  on_map: of('length', profile.onMap),
  climb: of('length', profile.climb),
  over_ridge: profile.overRidge,
  highest: groundPointTree(profile.highest, site),
  lowest: groundPointTree(profile.lowest, site),
  taken_level: of('length', profile.takenLevel),
});

export const caseTree = (
  { code, title, impossible, totalFlow, highestHose, breaks }: CaseAnswer,
  units: UnitSystem,
) => ({
  code,
  title,
  impossible: impossibleTree(impossible, units),
  total_flow: impossible ? null : of('flow', totalFlow),
  highest_hose:
    highestHose && !impossible
      ? { at: highestHose.at, pressure: of('pressure', highestHose.pressure) }
      : null,
  breaks,
});

export const supplyTree = (
  { kind, flow, intake, floor, draft, hydrant, relay }: SupplyAnswer,
  site: SiteConditions,
) => ({
  kind,
  flow: of('flow', flow),
  intake_pressure: standingTree(noState(intake, site, flow), intake),
  reason: reasonTree(noState(intake, site, flow)),
  floor: floor ? { pressure: of('pressure', floor.pressure), source: floor.source } : null,
  draft: draft
    ? {
        lift: of('length', draft.lift),
        theoretical_lift: of('length', draft.theoreticalLift),
        attainable_lift: of('length', draft.attainableLift),
      }
    : null,
  hydrant: hydrant
    ? {
        static: of('pressure', hydrant.static),
        residual: of('pressure', hydrant.residual),
        flow: of('flow', hydrant.flow),
        at_floor: orNull('flow', hydrant.atFloor),
      }
    : null,
  relay: relay
    ? {
        pressure: of('pressure', relay.pressure),
        relief_at: of('pressure', relay.reliefAt),
        relief: orNull('pressure', relay.relief),
        source: relay.source,
      }
    : null,
});

export const portableTankTree = ({ name, capacity, inflow, outflow }: PortableTankAnswer) => ({
  name,
  capacity: of('volume', capacity),
  inflow: of('flow', inflow),
  outflow: of('flow', outflow),
});
