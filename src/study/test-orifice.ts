import type { Assembly, NamedPlace, StagingName } from '../assembly/assembly.js';
import type { OperatingPoint } from '../assembly/operating-point.js';
import { nozzleLaw } from '../assembly/outlet.js';
import { citation } from '../catalogue/citation.js';
import type { TypingTestOrifice } from '../catalogue/schema/typing.js';
import { type Impossibility, whyImpossible } from '../limits/impossible.js';
import { velocityHead } from '../physics/velocity.js';
import type { TestOrifice } from './answer.js';
import { samePlumbing } from './conditions.js';
import { closingOrifice } from './delivery.js';
import { type Rig, SolvedAssembly } from './rig.js';

/** What the inspector reads, the state that he reads it in, and why that state cannot be, where it cannot. */
export interface OrificeReading {
  answer: TestOrifice;
  state: OperatingPoint;
  impossible?: Impossibility;
}

/** A rig in a staging with an orifice on one of its ends, for whoever asks again under other conditions. */
export interface TestStand {
  rig: Rig;
  solved: SolvedAssembly;
  end: NamedPlace;
}

/**
 * Hangs the agency's test orifice on an end and predicts what the inspector reads there: the gauge in the tee upstream of
 * it, which reads static pressure. The orifice is a link of the network like any nozzle. Throws NoSteadyAnswer where the
 * network has no steady state.
 */
export function readTestOrifice(
  rig: Rig,
  staging: StagingName,
  end: string,
  orifice: TypingTestOrifice,
): OrificeReading {
  const { bore, tee_bore, discharge_coefficient, passes, grades } = orifice;
  const { solved, end: at } = standOf(rig, staging, end, orifice);
  const state = solved.solve();
  const flow = Math.max(0, state.flow(solved.assembly.testOrifice as number));
  const velocity = tee_bore === undefined ? 0 : velocityHead(flow, tee_bore);
  const reading = state.pressureOf(state.headOver(at.place) - velocity);
  const impossible = whyImpossible(state);
  const answer: TestOrifice = {
    bore,
    dischargeCoefficient: discharge_coefficient,
    reading,
    flow,
    margin: reading - passes,
    grades: grades ?? [{ grade: 'pass', from: passes }],
    grade: grades?.find(({ from }) => reading >= from)?.grade ?? (reading >= passes ? 'pass' : 'below'),
    source: citation(orifice),
    impossible,
  };
  return { answer, state, impossible };
}

/** The network with the orifice on an end; where one of the same plumbing was made before, that is solved on. */
function standOf(rig: Rig, staging: StagingName, end: string, orifice: TypingTestOrifice): TestStand {
  const { kind, bore, discharge_coefficient, tee_bore } = orifice;
  const key = [staging, end, kind, bore, discharge_coefficient, tee_bore].join(' ');
  const before = rig.stands.get(key);
  if (before && samePlumbing(before.rig.layout, rig.layout)) {
    if (before.rig === rig) return before;
    const turned: Assembly = rig.turned(before.solved.assembly);
    return { rig, solved: before.solved.as(turned), end: before.end };
  }
  const tee = kind === 'sharp_orifice' ? { tee_bore } : {};
  const law = nozzleLaw({ kind, bore, discharge_coefficient, ...tee }, rig.site);
  const lay = closingOrifice(rig) ? 'to_end' : 'none';
  const assembly = rig.assemble({ staging, lay, testOrifice: { end, law } });
  const at = assembly.ends.find(({ name }) => name === end) as NamedPlace;
  const made: TestStand = { rig, solved: new SolvedAssembly(assembly), end: at };
  if (before === undefined) rig.stands.set(key, made);
  return made;
}
