import type { Nozzle } from '../catalogue/schema/nozzle.js';
import type { Valve } from '../catalogue/schema/valve.js';
import { withArticle } from '../quantity/article.js';
import type { Reading } from './reading.js';
import type { StepDocument, StepKey } from './schema/steps.js';
import type { Spot } from './spot.js';
import type { CountedFitting, Modelled, RiseBasis, Step } from './step.js';

type Model = Modelled & { model: unknown };
type OneDocument = StepDocument[StepKey];

interface Parts {
  key: Exclude<StepKey, 'repeat'>;
  data: OneDocument;
  model: Model | undefined;
  spot: Spot;
  reading: Reading;
}

/**
 * A step from what its schema read and its model; without label, with nothing in its lines, and level where it has no
 * rise of its own. Undefined where its parts do not fit each other, which is reported.
 */
export function makeStep({ key, data, model, spot, reading }: Parts): Step | undefined {
  const name = (data as { name?: string }).name;
  const base = { label: '', ...(name === undefined ? {} : { name }), ...spot.placed() };
  const { model: part, ...modelled } = model ?? { modelName: '' };
  switch (key) {
    case 'hose': {
      const { length, lines, rise } = data as StepDocument['hose'];
      const rising = riseOf(rise, length, spot, reading);
      return rising && ({ ...base, ...modelled, kind: key, hose: part, length, lines, ...rising } as Step);
    }
    case 'pipe': {
      const { length = 0, rise } = data as StepDocument['pipe'];
      const rising = riseOf(rise, length, spot, reading);
      const fittings = fittingsOf(data as StepDocument['pipe'], spot, reading);
      if (length === 0 && fittings?.length === 0) {
        return reading.report(spot, 'a pipe has a length, fittings or both, and this has neither');
      }
      if (!rising || !fittings) return undefined;
      return { ...base, ...modelled, kind: key, pipe: part, length, fittings, ...rising } as Step;
    }
    case 'valve': {
      const { open = 1 } = data as StepDocument['valve'];
      if (open > 0 && open < 1 && (part as Valve | undefined)?.part_open === undefined) {
        return reading.report(spot, 'nothing is known of this valve part open', {
          within: ['open'],
          hint: 'give it part_open, rows of opening and velocity heads lost over those wide open, or take another valve',
        });
      }
      const narrowest = (part as Valve | undefined)?.part_open?.at(-1)?.[0];
      if (narrowest !== undefined && open > 0 && open < narrowest) {
        return reading.report(spot, `nothing is known of this valve open less than ${percent(narrowest)}`, {
          within: ['open'],
          expected: `0 % where it is shut, or from ${percent(narrowest)} to 100 %`,
          hint: 'or give the valve a row of part_open for a narrower opening',
        });
      }
      return { ...base, ...modelled, kind: key, valve: part, open } as Step;
    }
    case 'check_valve':
      return { ...base, ...modelled, kind: key, check_valve: part } as Step;
    case 'appliance':
      return { ...base, ...modelled, kind: key, appliance: part, policy: reading.policy } as Step;
    case 'branch':
      return { ...base, ...modelled, kind: key, branch: part, policy: reading.policy, to: [] } as Step;
    case 'siamese':
      return { ...base, kind: key, siamese: [] };
    case 'pump': {
      const { throttle, fuel_tank } = data as StepDocument['pump'];
      return { ...base, ...modelled, kind: key, pump: part, throttle, fuel_tank } as Step;
    }
    case 'tank':
      return { ...base, kind: key, tank: (data as StepDocument['tank']).tank };
    case 'nozzle': {
      const { nozzle: _, name: __, ...given } = data as StepDocument['nozzle'];
      const nozzle = nozzleAs(part as Nozzle, given, spot, reading);
      return nozzle && { ...base, ...modelled, kind: key, ...given, nozzle };
    }
    case 'open_end':
    case 'cap':
      return { ...base, kind: key };
    case 'gauge': {
      const { gauge, range } = data as StepDocument['gauge'];
      return { ...base, kind: key, name: gauge, gauge, range };
    }
  }
}

/**
 * Height gained along a length. A grade G is height over level distance and the hose lies along the slope, so that a
 * length L gains L G / sqrt(1 + G^2).
 */
export function riseOfGrade(length: number, grade: number): number {
  return (length * grade) / Math.hypot(1, grade);
}

function riseOf(
  rise: number | { grade: number } | undefined,
  length: number,
  spot: Spot,
  reading: Reading,
): { rise: number; riseBasis: RiseBasis } | undefined {
  if (rise === undefined) return { rise: 0, riseBasis: 'level' };
  if (typeof rise === 'object') return { rise: riseOfGrade(length, rise.grade), riseBasis: 'grade' };
  if (Math.abs(rise) <= length) return { rise, riseBasis: 'stated' };
  return reading.report(spot, 'it rises or drops by more than its own length', { within: ['rise'] });
}

const percent = (ratio: number): string => `${Number((ratio * 100).toPrecision(6))} %`;

function fittingsOf(data: StepDocument['pipe'], spot: Spot, reading: Reading): CountedFitting[] | undefined {
  const found: CountedFitting[] = [];
  const counts = Object.entries(data.fittings ?? {});
  for (const [id, count] of counts) {
    const known = reading.catalogue.idOf('fitting', id);
    const fitting = known === undefined ? undefined : reading.catalogue.find('fitting', known);
    const at = spot.child('fittings')?.child(id);
    if (known !== undefined && fitting)
      found.push({ id: known, modelName: fitting.name ?? known, fitting, count });
    else if (at) reading.unknownId('fitting', id, at, true);
  }
  return found.length === counts.length ? found : undefined;
}

/** A nozzle as its step sets it. Bores closer than this are one: tips are told apart by sixteenths of an inch. */
const SAME_BORE = 1e-6;

/** Why a flow cannot be set on a nozzle that is no fog nozzle, and what to write instead. */
const NO_FLOW = {
  smooth_bore: 'the flow of a smooth bore follows from its bore and its pressure, and cannot be set',
  sharp_orifice: 'the flow of an orifice follows from its bore and its pressure, and cannot be set',
  automatic: 'an automatic nozzle passes what comes to it, and its flow cannot be set',
} as const;
const FLOW_HINT = {
  smooth_bore: 'leave flow out; tip: 3/8 in chooses the bore, and pressure: 50 psi says what it is laid for',
  sharp_orifice:
    'leave flow out; tip: 0.716 in chooses the bore, and pressure: 250 psi says what it is laid for',
  automatic:
    'leave flow out; its range is flow_from and flow_to of its model, and pressure: 100 psi what it holds',
} as const;

function nozzleAs(
  nozzle: Nozzle,
  given: { tip?: number; flow?: number; pressure?: number },
  spot: Spot,
  reading: Reading,
): Nozzle | undefined {
  const { tip, flow, pressure } = given;
  if (flow !== undefined && nozzle.kind !== 'fog') {
    return reading.report(spot, NO_FLOW[nozzle.kind], {
      within: ['flow'],
      key: true,
      hint: FLOW_HINT[nozzle.kind],
    });
  }
  switch (nozzle.kind) {
    case 'smooth_bore': {
      if (tip === undefined) return nozzle;
      const { tips, ...rest } = nozzle;
      if (tips && !tips.some((bore) => Math.abs(bore - tip) < SAME_BORE)) {
        return reading.report(spot, 'the nozzle has no such tip', {
          within: ['tip'],
          expected: tipsText(tips),
        });
      }
      return { ...rest, bore: tip };
    }
    case 'sharp_orifice':
      return tip === undefined ? nozzle : { ...nozzle, bore: tip };
    case 'fog':
    case 'automatic': {
      if (tip !== undefined) {
        return reading.report(
          spot,
          `${withArticle(nozzle.kind.replace('_', ' '))} nozzle has no tip to choose`,
          {
            within: ['tip'],
            key: true,
          },
        );
      }
      const rated = flow === undefined ? {} : { flow };
      return { ...nozzle, ...rated, ...(pressure === undefined ? {} : { pressure }) };
    }
  }
}

function tipsText(tips: readonly number[]): string {
  return `one of ${tips.map((bore) => `${Number((bore / 0.0254).toFixed(4))} in`).join(', ')}`;
}
