import type { HabitAnswer } from '../../study/answer.js';
import { type Block, heading, paragraph } from '../document.js';
import type { Figures } from '../figures.js';

/** The costliest mistake of the notebook, with both figures. */
export function habitSection(habits: HabitAnswer[], figures: Figures): Block[] {
  if (habits.length === 0) return [];
  return [
    heading('Where the end-to-end habit misleads'),
    ...habits.map((habit) => {
      const flow = figures.say('habits.flow', 'flow', habit.flow);
      const hose = figures.say('habits.hose', 'length', habit.hose);
      const actual = figures.say('habits.friction', 'pressure', habit.actual);
      const habitual = figures.say('habits.friction_end_to_end', 'pressure', habit.endToEnd);
      return paragraph(
        `The ${hose} of trunk from ${habit.outlet} lose ${actual} to friction, with water leaving at each wye. ` +
          `Taking all ${flow} to the far end would have said ${habitual}.`,
        'care',
      );
    }),
  ];
}
