import { readLayoutText } from '../../src/layout/read-layout.js';
import { operateLayout } from '../../src/study/operation.js';
import { advanceLayout } from '../../src/study/progression.js';
import { median } from './timing.js';

/** A plan of 60 sections that its last one stops, so that all of them are solved and every option after them. */
const PLAN = `
title: sixty sections
engine:
  name: invented
  tank: {capacity: 50,000 gal, outlet_height: 1 ft}
  pumps: {a: {model: demo-highlift}, b: {model: demo-highlift}}
staging: parallel
throttle: 80 %
terrain: [[0 ft, 0 ft], [6400 ft, 10 ft]]
progressive:
  trunk: {hose: {inside_diameter: 2.5 in, coefficient: 0.8, limits: {working: 400 psi}}, length: 100 ft}
  sections: 64
  lateral:
    branch: gated-wye
    steps:
      - hose: forestry-1
        length: 100 ft
      - nozzle: {kind: fog, flow: 2.1 gpm, pressure: 100 psi}
  end:
    - nozzle: tip-1/8
`;

export interface AdvanceResult {
  steps: number;
  options: number;
  /** Processor time of an advance, ms, and of one `flow` of the whole lay. */
  advance: number;
  flow: number;
  ratio: number;
}

/** An advance over 60 steps with every option, against one `flow` of the lay as the plan leaves it. */
export async function timeAdvance(rounds = 9): Promise<AdvanceResult> {
  const { layout } = readLayoutText(PLAN, 'plan.yaml');
  const answer = await advanceLayout(layout);
  const advance: number[] = [];
  const flow: number[] = [];
  for (let round = 0; round < rounds + 3; round += 1) {
    const taken = [
      await processorTime(() => advanceLayout(layout)),
      await processorTime(() => operateLayout(layout)),
    ];
    if (round < 3) continue;
    advance.push(taken[0]);
    flow.push(taken[1]);
  }
  return {
    steps: answer.steps.length,
    options: answer.options.length,
    advance: median(advance),
    flow: median(flow),
    ratio: median(advance.map((time, index) => time / flow[index])),
  };
}

/** In ms; what else runs on the machine does not count. */
async function processorTime(task: () => Promise<unknown>): Promise<number> {
  const before = process.cpuUsage();
  await task();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
}
