import { hasPowerData } from '../assembly/engine-power.js';
import type { Place } from '../assembly/network-builder.js';
import type { OperatingPoint } from '../assembly/operating-point.js';
import type { Site } from '../assembly/site.js';
import { STANDSTILL } from '../assembly/standstill.js';
import { citation } from '../catalogue/citation.js';
import { DEFAULT_APPLIANCE_POLICY } from '../catalogue/schema/appliance.js';
import { frictionLaw } from '../catalogue/schema/friction.js';
import type { Source } from '../catalogue/schema/text.js';
import { literal } from '../caution/caution.js';
import type { EnginePump, Layout } from '../layout/layout.js';
import type { Step } from '../layout/step.js';
import type { Dimension, Measure } from '../quantity/dimension.js';
import type { Statement } from './answer.js';
import { allSteps } from './rig.js';

/** What an answer rests on, so that a reader can disagree with it: conditions, laws, and every value looked up. */
export function assumptions(layout: Layout, site: Site): Statement[] {
  const steps = allSteps(layout);
  return [
    ...conditions(site),
    ...water(layout),
    ...laws(layout, steps),
    ...pumps(layout),
    ...lookedUp(steps),
  ];
}

/** What figures of water that runs back rest on, where some of them do: no curve is measured there. */
export function backflow(states: readonly OperatingPoint[], standing = false): Statement[] {
  const statements: Statement[] = [];
  if (states.some((point) => point.assembly.pumps.some(({ link }) => point.flow(link) < -STANDSTILL))) {
    statements.push({
      template:
        'Water runs back through a pump that turns: its curve is carried on to there as a straight line with its mean slope, and how much runs back is a guess',
      source: 'common practice, no source; no curve is measured with the flow reversed',
    });
  }
  if (standing) {
    statements.push({
      template:
        'A pump that stands with its valves open is taken to lose, at its last flow, what its curve falls by up to there, and by the square of flow; driven backward it may spin and pass more',
      source: 'common practice, no source',
    });
  }
  return statements;
}

/** Where the verdict is read on total pressure, as no bore is known there. */
export function totalForGauge(at: string, state: OperatingPoint, place: Place): Statement[] {
  if (state.readsStatic(place)) return [];
  return [
    {
      template:
        'No bore is known at {at}, where the verdict is read: total pressure is judged there, and a gauge reads less by the velocity head',
      values: { at },
      source: 'heads are total, gauges read static pressure (general hydraulics)',
    },
  ];
}

function of(value: number, dimension: Dimension): Measure {
  return { value, dimension };
}

function conditions(site: Site): Statement[] {
  return [
    {
      template: 'Site at {elevation}: air pressure {pressure} absolute by the standard atmosphere',
      values: { elevation: of(site.elevation, 'length'), pressure: of(site.atmosphericPressure, 'pressure') },
      source: 'US Standard Atmosphere 1976',
    },
    {
      template: 'Water at {temperature}: density {density}',
      values: {
        temperature: of(site.waterTemperature, 'temperature'),
        density: of(site.waterDensity, 'density'),
      },
      source: 'IAPWS saturation equations, coefficients from memory',
    },
  ];
}

function water(layout: Layout): Statement[] {
  if (layout.supply.kind !== 'tank' || layout.engine.tank !== undefined) return [];
  return [
    {
      template: 'The layout describes no tank: its water is taken to stand level with the pump inlets',
      source: 'stated by this program',
    },
  ];
}

function laws(layout: Layout, steps: readonly Step[]): Statement[] {
  const frictions = new Set(
    steps.flatMap((step) => {
      if (step.kind === 'hose') return [frictionLaw(step.hose).law];
      if (step.kind === 'pipe' && step.length > 0) return [frictionLaw(step.pipe).law];
      return [];
    }),
  );
  const statements: Statement[] = [];
  if (frictions.has('coefficient')) {
    statements.push({
      template:
        'Hose friction by coefficient, C Q^2 L; published coefficients mostly lie above measured ones',
      source: 'hose friction study of 2012, revised 2013, abstract',
    });
  }
  if (frictions.has('hazen_williams')) {
    statements.push({
      template: 'Friction by Hazen-Williams where a C of that formula is given',
      source: 'EPANET source, constant 4.727',
    });
  }
  if (frictions.has('darcy')) {
    statements.push({
      template: 'Pipe friction by Darcy-Weisbach with Colebrook, laminar flow included',
      source: 'Colebrook formula',
    });
  }
  if (steps.some((step) => step.kind === 'appliance' || step.kind === 'branch')) {
    const stated =
      layout.appliance_policy === DEFAULT_APPLIANCE_POLICY ? ' (taken where the layout names none)' : '';
    statements.push({
      template: `Appliances by the ${layout.appliance_policy} rule${stated}`,
      source: 'the three rules conflict by design; the sources stand with each appliance in the catalogue',
    });
  }
  statements.push({
    template: 'A gauge reads static pressure: total less the velocity head in the bore that it follows',
    source: 'Bernoulli',
  });
  return statements;
}

function pumps(layout: Layout): Statement[] {
  const { a, b } = layout.engine.pumps;
  const own = [{ name: 'a', pump: a }, ...(b ? [{ name: 'b', pump: b }] : [])];
  const throttle = layout.throttle.by === 'speed' ? layout.throttle : { a: 1, b: 1 };
  return [
    ...own.map(({ name, pump }): Statement => {
      const wear = pump.wear > 0 ? ', worn by {wear} of its head' : ', taken as unworn';
      return {
        template: `Pump ${name} is {model}${wear}, at {throttle} of governed speed`,
        values: {
          model: pump.modelName,
          wear: of(pump.wear, 'ratio'),
          throttle: of(throttle[name as 'a' | 'b'], 'ratio'),
        },
        source: citation(pump.model, 'points'),
      };
    }),
    ...power(layout, own),
  ];
}

const DERATING: Record<Layout['site']['derating'], { template: string; source: string }> = {
  agricultural: {
    template:
      'Engines lose 3 % of their power in 1,000 ft above 500 ft and, above 85 degF, 1 % in 10 degF (gasoline) or 5 degF (diesel); turbocharged ones nothing',
    source: 'agricultural engineering text, altitude and temperature',
  },
  sae_j1349: {
    template:
      'Engines lose power by SAE J1349 from 990 mbar of dry air at 25 degC, the air here taken as dry; beyond a correction of 7 % it is carried on past its range',
    source: 'SAE J1349 (Jun 1990), quoted second hand; diesel exponents from memory',
  },
  none: { template: 'Engines are taken to lose no power to height and heat', source: 'stated in the layout' },
};

/** What engines are taken to have, and what stands for what their files do not say. */
function power(layout: Layout, own: { name: string; pump: EnginePump }[]): Statement[] {
  const told = own.filter(({ pump }) => hasPowerData(pump.model));
  const statements: Statement[] = [DERATING[layout.site.derating]];
  if (told.length > 0) {
    statements.push({
      template:
        'A pump turns at governed speed until it asks for more power than its engine has left, and then at the speed at which both balance; a worn pump asks for what it asked for when new',
      source:
        'affinity laws; power at no flow and beyond the rows of efficiency is common practice, no source',
    });
  }
  if (told.length < own.length) {
    statements.push({
      template:
        'Where a file has not both engine power and efficiency, its engine is taken to hold governed speed, and the verdict is bracketed beside it',
      source: 'common practice, no source',
    });
  }
  return statements;
}

/** Every part that the catalogue lent to the plumbing, once each. */
function lookedUp(steps: readonly Step[]): Statement[] {
  const seen = new Map<string, Statement>();
  const add = (kind: string, id: string | undefined, modelName: string, source: Source | undefined) => {
    if (id === undefined) return;
    seen.set(`${kind} ${id}`, {
      template: literal(`${kind} ${modelName}`),
      source: citation({ source }),
    });
  };
  for (const step of steps) {
    const model = modelOf(step);
    if (model && 'id' in step) add(step.kind.replace('_', ' '), step.id, step.modelName, model.source);
    if (step.kind !== 'pipe') continue;
    for (const { id, modelName, fitting } of step.fittings) add('fitting', id, modelName, fitting.source);
  }
  return [...seen.values()];
}

function modelOf(step: Step): { source?: Source } | undefined {
  switch (step.kind) {
    case 'hose':
      return step.hose;
    case 'pipe':
      return step.pipe;
    case 'valve':
      return step.valve;
    case 'check_valve':
      return step.check_valve;
    case 'appliance':
      return step.appliance;
    case 'branch':
      return step.branch;
    case 'nozzle':
      return step.nozzle;
    case 'pump':
      return step.pump;
    default:
      return undefined;
  }
}
