import { at, put } from './memory';
import { System } from './system';

/**
 * Keeps the flow of every chain as one of the solutions kept, whose array is `into`, and sets it to the sum of those of all
 * solutions kept, each times its weight.
 */
export function blendFlows(system: System, into: usize): void {
  const flow = system.flow;
  const first = system.first;
  const second = system.second;
  const third = system.third;
  const fourth = system.fourth;
  const a = at(system.weight, 0);
  const b = at(system.weight, 1);
  const c = at(system.weight, 2);
  const d = at(system.weight, 3);
  const count = system.count;
  for (let i: i32 = 0; i < count; i++) {
    put(into, i, at(flow, i));
    put(flow, i, a * at(first, i) + b * at(second, i) + c * at(third, i) + d * at(fourth, i));
  }
}
