import * as z from 'zod';
import { PowerCurve } from '../../physics/pump-curve/power.js';
import { parseQuantity } from '../../quantity/parse.js';
import { quantity } from '../../quantity/schema.js';
import { across } from './bore.js';
import { choice } from './choice.js';
import { PLACE } from './place.js';
import { description, price, text } from './text.js';

const flow = quantity('flow', { atLeast: 0 });
const pressure = quantity('pressure', { atLeast: 0 });

/** Points of a curve: far more than anyone measures. Common practice, no source. */
const MOST_ROWS = 200;
const rowsBounded = `at most ${MOST_ROWS} rows are wanted: take some of them, evenly spread`;

/** A pump that turns less of its power into head is none; common practice, no source. */
const LEAST_EFFICIENCY = 0.01;

/** Adds a problem for each row whose flow does not rise above the row before. */
function flowsRise(rows: [number, unknown][], context: z.RefinementCtx): void {
  for (let i = 1; i < rows.length; i++)
    if (rows[i][0] <= rows[i - 1][0])
      context.addIssue({
        code: 'custom',
        path: [i, 0],
        message: 'more flow is wanted than at the point before',
      });
}

/** What a pump adds at a point of its curve: a pressure, Pa, or a head as curves are printed, m. */
export type CurveRise = number | { head: number };

/** How much of it there is, for points of one curve, which are all of one kind. */
export const riseValue = (rise: CurveRise): number => (typeof rise === 'number' ? rise : rise.head);

/** Whether a text reads as a height of water: its unit is one of length. */
function isHead(value: unknown): boolean {
  return typeof value === 'string' && 'value' in parseQuantity(value, 'length');
}

const head = () =>
  quantity('length', { atLeast: 0, example: '490 ft', description: 'Head that the pump adds' }).transform(
    (metres) => ({ head: metres }),
  );

const rise = () => choice([pressure, head()], (value) => (isHead(value) ? 1 : 0));

const points = () =>
  z
    .array(z.tuple([flow, rise()]))
    .min(3, 'at least three points are wanted')
    .max(MOST_ROWS, `at most ${MOST_ROWS} points are wanted: take some of them, evenly spread`)
    .superRefine((rows, context) => {
      flowsRise(rows, context);
      const last = rows.length - 1;
      const other = rows.findIndex(([, one]) => typeof one !== typeof rows[0][1]);
      if (other > 0)
        context.addIssue({
          code: 'custom',
          path: [other, 1],
          message: 'one kind is wanted for a whole curve: pressures (psi, kPa, bar) or heads (ft, m)',
        });
      else if (last > 0 && riseValue(rows[last][1]) >= riseValue(rows[0][1]))
        context.addIssue({
          code: 'custom',
          path: [last, 1],
          message: 'expected less pressure than at the first point: a pump loses pressure as it moves more',
        });
    })
    .meta({
      description:
        'Flow against the pressure or the head that the pump adds, from no flow up where it was measured, at the rated speed: [[0 gpm, 415 psi], ...] or [[0 gpm, 960 ft], ...]',
    });

const efficiency = () =>
  z
    .array(z.tuple([flow, quantity('ratio', { positive: true, atLeast: LEAST_EFFICIENCY, atMost: 1 })]))
    .min(1)
    .max(MOST_ROWS, rowsBounded)
    .superRefine(flowsRise);

const npshRequired = () =>
  z
    .array(z.tuple([flow, quantity('length', { atLeast: 0 })]))
    .min(1)
    .max(MOST_ROWS, rowsBounded)
    .superRefine(flowsRise);

const testedAt = () =>
  z.strictObject({
    elevation: quantity('length', PLACE.elevation).optional(),
    air_temperature: quantity('temperature', PLACE.airTemperature).optional(),
    water_temperature: quantity('temperature', PLACE.waterTemperature).optional(),
  });

const power = () =>
  z.strictObject({
    rated: quantity('power', { positive: true }).meta({
      description: 'Power of the engine at the rated speed',
    }),
    aspiration: z.enum(['natural', 'turbocharged']).optional(),
    fuel: z.enum(['gasoline', 'diesel']).optional(),
    burn: quantity('flow', { positive: true })
      .optional()
      .meta({ description: 'Fuel used at the rated power' }),
    lugging: z.enum(['constant_power', 'flat_torque']).optional().meta({
      description:
        'How the power falls as the engine is pulled below its rated speed; constant_power by default',
    }),
  });

const limits = () =>
  z.strictObject({
    inlet: quantity('pressure', { positive: true })
      .optional()
      .meta({ description: 'Highest pressure at the inlet and its seal' }),
    casing: quantity('pressure', { positive: true })
      .optional()
      .meta({ description: 'Highest pressure in the casing' }),
    speed: quantity('speed', { positive: true }).optional(),
  });

const serviceSchema = () =>
  z
    .strictObject({
      every: quantity('time', {
        positive: true,
        example: '50 h',
        description: 'Running hours between',
      }).optional(),
      months: z.int().positive().optional().meta({ description: 'Months between' }),
    })
    .refine(({ every, months }) => every !== undefined || months !== undefined, {
      error: 'every, in running hours, or months is wanted',
    });

/** Whether H = A - B Q^C can pass through three points; in proportion, so that pressure will do for head. */
export function powerCurveFits(rows: readonly (readonly [number, CurveRise])[]): boolean {
  try {
    new PowerCurve(rows.map(([q, rise]) => ({ flow: q, head: riseValue(rise) })));
    return true;
  } catch (error) {
    if (error instanceof RangeError) return false;
    throw error;
  }
}

export const pumpSchema = z.lazy(() =>
  z
    .strictObject({
      ...description,
      rated_speed: quantity('speed', { positive: true })
        .optional()
        .meta({ description: 'Speed of the curve, which the governor holds at full throttle' }),
      points: points(),
      shape: z.enum(['power', 'quadratic', 'monotone']).optional().meta({
        description: 'How the curve runs between its points: power by default for three, monotone for more',
      }),
      tested_at: testedAt().optional().meta({ description: 'Where the curve was measured' }),
      uncertainty: quantity('ratio', { positive: true, atMost: 0.5 }).optional().meta({
        description: 'What the pressures of its points may be off by, either way, nine times in ten',
      }),
      power: power().optional(),
      efficiency: efficiency().optional().meta({ description: 'Flow against the efficiency of the pump' }),
      npsh_required: npshRequired()
        .optional()
        .meta({ description: 'Flow against the net positive suction head that the pump needs' }),
      limits: limits().optional(),
      weight: quantity('mass', { positive: true })
        .optional()
        .meta({ description: 'Dry weight with its engine' }),
      price: price
        .optional()
        .meta({ description: 'In the money of the file, the same for every price in it' }),
      service: z
        .record(z.string(), serviceSchema())
        .optional()
        .meta({ description: 'Services that its maker asks for, by name' }),
      parts: z.array(text).optional().meta({ description: 'Spare parts that fit it, by name or number' }),
      trapped_volume: quantity('volume', { positive: true })
        .optional()
        .meta({ description: 'Water in the casing, which heats when nothing flows' }),
      hours: quantity('time', { atLeast: 0 })
        .optional()
        .meta({ description: 'Running hours when the curve was measured' }),
      inlet_bore: across.optional(),
      outlet_bore: across.optional(),
    })
    .refine((pump) => pump.shape !== 'power' || pump.points.length === 3, {
      path: ['shape'],
      error: 'three points are wanted for the power shape',
    })
    .refine((pump) => pump.shape !== 'power' || pump.points.length !== 3 || powerCurveFits(pump.points), {
      path: ['shape'],
      error: 'no power curve goes through these three points: leave the shape out, or write monotone',
    })
    .meta({ title: 'pump' }),
);

export type Pump = z.infer<typeof pumpSchema>;
