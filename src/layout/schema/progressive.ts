import * as z from 'zod';
import { hoseSchema } from '../../catalogue/schema/hose.js';
import { pumpSchema } from '../../catalogue/schema/pump.js';
import { quantity } from '../../quantity/schema.js';
import { choice, isMapping, made, whatStands } from './choice.js';
import { idOr, STEP_SCHEMAS, stepsSchema, throttlePart, wholeNumber } from './steps.js';

/** Sections that a plan may have: far more than a crew lays, and an end to a slip of the pen. */
export const MOST_SECTIONS = 200;
/** Least pressure at the intake of a pump that another one feeds, Pa (20 psi). */
const RELAY_INTAKE = '20 psi';

const FLOWING_WANTED = 'all or none is wanted, or { last: 2 } for the two nearest the head of the lay';

const flowing = () =>
  choice(
    [
      z.enum(['all', 'none']),
      z.strictObject({ last: wholeNumber(1, MOST_SECTIONS) }),
      z.strictObject({ numbers: z.array(wholeNumber(1, MOST_SECTIONS)).min(1) }),
    ],
    (value) => {
      if (typeof value === 'string') return 0;
      if (!isMapping(value)) return `${whatStands(value)}; ${FLOWING_WANTED}`;
      return Object.hasOwn(value, 'numbers') ? 2 : 1;
    },
  ).meta({ description: 'Which laterals flow while the lay advances' });

export const progressiveSchema = z.lazy(() => {
  const { hose, length, rise, lines } = made(STEP_SCHEMAS.hose).shape;
  return z
    .strictObject({
      outlet: z
        .string()
        .optional()
        .meta({ description: 'Outlet that it grows from, where the engine has several' }),
      trunk: z
        .strictObject({ hose, length, rise, lines })
        .meta({ description: 'One section of the trunk; without a rise it takes the terrain' }),
      sections: wholeNumber(1, MOST_SECTIONS).meta({ description: 'How many sections the plan goes' }),
      lateral: z
        .strictObject({
          every: wholeNumber(1, MOST_SECTIONS)
            .default(1)
            .meta({ description: 'A lateral at the end of every so many sections' }),
          branch: made(STEP_SCHEMAS.branch).shape.branch,
          steps: stepsSchema,
          flowing: flowing().default('all'),
        })
        .optional()
        .meta({ description: 'What branches off the trunk' }),
      end: stepsSchema
        .optional()
        .meta({ description: 'What the head of the trunk ends in; a closed end unless given' }),
      pace: quantity('time', {
        positive: true,
        example: '6 min',
        description: 'Time that a section takes',
      }).optional(),
      booster: z
        .strictObject({
          pump: idOr('pump', pumpSchema).optional(),
          throttle: throttlePart.default(1),
          intake: quantity('pressure', {
            atLeast: 0,
            example: RELAY_INTAKE,
            description: 'Least pressure at its intake',
          }).optional(),
        })
        .prefault({})
        .meta({
          description:
            'The pump that could stand in the line or at a portable tank; one like the last of the engine unless given',
        }),
      bigger_trunk: idOr('hose', hoseSchema)
        .optional()
        .meta({ description: 'Hose that the trunk could be laid of instead' }),
    })
    .meta({
      title: 'progressive',
      description: 'A lay that grows a section at a time from where `lay` ends',
    });
});

export type ProgressiveDocument = z.output<typeof progressiveSchema>;
