import type { AssembleOptions } from '../assembly/assemble.js';
import type { StagingName } from '../assembly/assembly.js';
import type { Throttle } from '../assembly/engine.js';
import type { OperatingPoint } from '../assembly/operating-point.js';
import { type HazardCase, keyOf } from '../caution/hazard.js';
import type { Layout } from '../layout/layout.js';
import { whyImpossible } from '../limits/impossible.js';
import { burstOpen } from './far-line.js';
import type { CaseAnswer } from './field-answer.js';
import { gatedCautions } from './gated.js';
import { governed } from './governor.js';
import { highestHose, lowestPoint } from './ground-line.js';
import { ifSteady } from './if-steady.js';
import { LayPaths } from './paths.js';
import { type Rig, SolvedAssembly } from './rig.js';

/** A state that is looked into whether anyone asks or not. */
interface AlwaysRun extends HazardCase {
  code: CaseAnswer['code'];
  title: string;
}

/**
 * What may come to a lay that works as it stands: every nozzle shut, the far line burst open, one pump out. All at the
 * throttle of the state itself; a governor that holds a pressure goes on holding it.
 */
export function alwaysRun(
  rig: Rig,
  state: OperatingPoint,
  nozzleState?: AssembleOptions['nozzleState'],
): AlwaysRun[] {
  const { layout } = rig;
  if (layout.lay.length === 0) return [];
  const { staging } = state.assembly;
  const throttle = throttleOf(state, rig.throttle);
  const run = (from: Rig, how: StagingName, nozzles = nozzleState): OperatingPoint | undefined => {
    // Where nothing flows steadily in such a state there is nothing to hold against a limit.
    return ifSteady(() =>
      layout.throttle.by === 'discharge_pressure'
        ? governed(from, how, nozzles)
        : new SolvedAssembly(
            from.assemble({ staging: how, lay: 'whole', nozzleState: nozzles, throttle }),
          ).solve(),
    );
  };
  const cases: AlwaysRun[] = [];
  const add = (one: Omit<AlwaysRun, 'point'>, point: OperatingPoint | undefined) => {
    if (point) cases.push({ ...one, point });
  };
  add(
    {
      code: 'all_shut',
      kind: 'laid_shut',
      title: 'every nozzle shut',
      when: 'with every nozzle of the lay shut',
    },
    run(rig, staging, () => 'shut'),
  );
  const far = new LayPaths(state.assembly).farthest(
    state.assembly.nozzles.filter((one) => one.state === 'open'),
  );
  if (far && far.step.kind === 'nozzle' && far.inlet.bore !== undefined) {
    add(
      {
        code: 'far_line_burst',
        kind: 'burst',
        title: `hose burst open at ${far.name}`,
        when: `with the hose burst open at ${far.name}`,
        gone: far.name,
      },
      run(rig.with(burstOpen(layout, far.step)), staging),
    );
  }
  if (layout.engine.pumps.b && !['a', 'b', 'separate'].includes(staging)) {
    for (const left of ['a', 'b'] as const) {
      const out = left === 'a' ? 'b' : 'a';
      add(
        {
          code: 'one_pump_out',
          kind: 'one_out',
          title: `pump ${out} out`,
          when: `with pump ${out} out`,
        },
        run(rig, left),
      );
    }
  }
  return cases;
}

/** The cases as an answer has them, each with the limits that it breaks; the lowest point of a downhill lay among them. */
export function caseAnswers(rig: Rig, cases: readonly AlwaysRun[], stuck?: OperatingPoint): CaseAnswer[] {
  const { layout } = rig;
  // What lies in the layout itself is no limit that a case of it breaks.
  const always = new Set(gatedCautions({ layout, cases: [] }).map(keyOf));
  const answers = cases.map((one): CaseAnswer => {
    const { code, title, point } = one;
    const found = gatedCautions({ layout, cases: [one] }).filter(
      (caution) => caution.value !== undefined && !always.has(keyOf(caution)),
    );
    return {
      code,
      title,
      impossible: whyImpossible(point),
      totalFlow: totalFlow(point),
      highestHose: highestHose(point),
      breaks: found.map((caution) => caution.code),
    };
  });
  if (stuck) answers.push(stuckAnswer(layout, stuck));
  const shut = cases.find(({ code }) => code === 'all_shut');
  const low = shut && lowestPoint(shut.point);
  if (shut && low && low.height < 0) {
    const over = gatedCautions({ layout, cases: [{ kind: 'laid_shut', when: '', point: shut.point }] });
    answers.push({
      code: 'lowest_point',
      title: `lowest point of the lay, ${low.name}, every nozzle shut`,
      totalFlow: totalFlow(shut.point),
      highestHose: { at: low.name, pressure: low.pressure },
      breaks: over.filter(({ code }) => code.startsWith('hose_')).map(({ code }) => code),
    });
  }
  return answers;
}

/** What a governor leaves that does not turn its pump down, told beside what it does when it works. */
function stuckAnswer(layout: Layout, point: OperatingPoint): CaseAnswer {
  const found = gatedCautions({ layout, cases: [{ kind: 'laid_shut', when: '', point }] });
  return {
    code: 'governor_stuck',
    title: 'every nozzle shut, with a governor that does not turn down',
    impossible: whyImpossible(point),
    totalFlow: totalFlow(point),
    highestHose: highestHose(point),
    breaks: found.filter(({ code }) => /^(hose|casing|inlet)_over/.test(code)).map(({ code }) => code),
  };
}

/** Every nozzle shut at the speeds of a state, as a stuck governor would have it; undefined where none holds a pressure. */
export function stuckShut(rig: Rig, state: OperatingPoint): OperatingPoint | undefined {
  if (rig.layout.throttle.by !== 'discharge_pressure' || rig.layout.lay.length === 0) return undefined;
  const throttle = throttleOf(state, rig.throttle);
  const { staging } = state.assembly;
  return ifSteady(() =>
    new SolvedAssembly(rig.assemble({ staging, lay: 'whole', nozzleState: () => 'shut', throttle })).solve(),
  );
}

function throttleOf(state: OperatingPoint, otherwise: Throttle): Throttle {
  const speed = (id: 'a' | 'b') =>
    state.assembly.pumps.find((pump) => !pump.booster && pump.name === `pump ${id}`)?.speed;
  const some = speed('a') ?? speed('b');
  return { a: speed('a') ?? some ?? otherwise.a, b: speed('b') ?? some ?? otherwise.b };
}

/** What leaves the nozzles and ends together, m3/s. */
export function totalFlow(point: OperatingPoint): number {
  return point.assembly.nozzles.reduce(
    (sum, { link }) => sum + (link === undefined ? 0 : Math.max(0, point.flow(link))),
    0,
  );
}
