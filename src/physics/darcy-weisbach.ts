import { STANDARD_GRAVITY } from './constants.js';
import { type FrictionAtReynolds, MoodyCurve } from './moody.js';
import { requireNotNegative, requirePositive } from './range.js';
import { boreArea } from './velocity.js';

/**
 * Reynolds number in a round bore.
 *
 * Formula: Re = V D / nu = 4 q / (pi D nu)
 * Range: flow 0 or above; bore and viscosity above 0.
 * Errors: none.
 * Source: definition.
 * @param flow flow [m3/s]
 * @param bore inside diameter [m]
 * @param viscosity kinematic viscosity [m2/s]
 * @returns Reynolds number [1]
 * @example reynoldsNumber(0.416, 0.5, 1.023053e-6) // => 1035465
 */
export function reynoldsNumber(flow: number, bore: number, viscosity: number): number {
  return (4 * flow) / (Math.PI * bore * viscosity);
}

/**
 * Resistance of a pipe whose friction factor is given; loss h = r q^2.
 *
 * Formula: h = f (L/D) V^2/2g = 8 f L q^2 / (pi^2 g D^5)
 * Range: length and friction factor 0 or above; bore above 0.
 * Errors: RangeError outside the range.
 * Source: Darcy-Weisbach; form as in a university hydraulics text, ch. 4.
 * @param frictionFactor Darcy friction factor [1]
 * @param bore inside diameter [m]
 * @param length length of pipe [m]
 * @returns head loss over flow squared [m/(m3/s)^2]
 * @example darcyResistance(0.02, 0.3048, 304.8) // => 191.531
 */
export function darcyResistance(frictionFactor: number, bore: number, length: number): number {
  requireNotNegative('friction factor', frictionFactor, '');
  requirePositive('bore', bore, 'm');
  requireNotNegative('length', length, 'm');
  return (frictionFactor * length) / (bore * 2 * STANDARD_GRAVITY * boreArea(bore) ** 2);
}

export interface DarcyPipe {
  /** m */
  length: number;
  /** Inside diameter, m. */
  bore: number;
  /** Height of the roughness, m. */
  roughness: number;
  /** Kinematic viscosity of the water, m2/s. */
  viscosity: number;
  /** Sum of the loss coefficients of what is fitted in the pipe, on its own bore. */
  lossCoefficient?: number;
}

/**
 * Head loss of a pipe by Darcy-Weisbach at any flow, either way, with its exact slope; allocates nothing when evaluated.
 *
 * Formula: h = (L nu^2 / (2 g D^3)) y(Re) + K V^2/2g, y = f Re^2 of `MoodyCurve`; slope by the derivative of each part
 * Range: length, roughness and K 0 or above; roughness up to 5 % of the bore; bore and viscosity above 0.
 * Errors: RangeError outside the range, when it is made.
 * Source: Darcy-Weisbach with Colebrook (1939); transition as in `MoodyCurve`.
 */
export class DarcyWeisbachLoss {
  readonly #moody: MoodyCurve;
  readonly #reynoldsPerFlow: number;
  readonly #headPerFriction: number;
  readonly #minor: number;
  readonly #friction: FrictionAtReynolds = { value: 0, slope: 0 };

  constructor(pipe: DarcyPipe) {
    requireNotNegative('length', pipe.length, 'm');
    requirePositive('bore', pipe.bore, 'm');
    requirePositive('kinematic viscosity', pipe.viscosity, 'm2/s');
    const lossCoefficient = pipe.lossCoefficient ?? 0;
    requireNotNegative('loss coefficient', lossCoefficient, '');
    this.#moody = new MoodyCurve(pipe.roughness / pipe.bore);
    this.#reynoldsPerFlow = reynoldsNumber(1, pipe.bore, pipe.viscosity);
    this.#headPerFriction = (pipe.length * pipe.viscosity ** 2) / (2 * STANDARD_GRAVITY * pipe.bore ** 3);
    this.#minor = lossCoefficient / (2 * STANDARD_GRAVITY * boreArea(pipe.bore) ** 2);
  }

  /** Writes the loss (m) at a flow (m3/s), of the flow's sign, and d(loss)/d(flow) into `out`. */
  evaluate(flow: number, out: { loss: number; slope: number }): void {
    const size = flow < 0 ? -flow : flow;
    const friction = this.#friction;
    this.#moody.evaluate(this.#reynoldsPerFlow * size, friction);
    const loss = this.#headPerFriction * friction.value + this.#minor * size * size;
    out.loss = flow < 0 ? -loss : loss;
    out.slope = this.#headPerFriction * friction.slope * this.#reynoldsPerFlow + 2 * this.#minor * size;
  }
}

/**
 * Head loss of a pipe by Darcy-Weisbach at one flow.
 *
 * Formula: as `DarcyWeisbachLoss`
 * Range: as `DarcyWeisbachLoss`.
 * Errors: RangeError outside the range.
 * Source: as `DarcyWeisbachLoss`.
 * @param pipe length, bore, roughness, viscosity and loss coefficient [m, m, m, m2/s, 1]
 * @param flow flow [m3/s]
 * @returns head loss, of the flow's sign [m]
 * @example darcyLoss({ length: 100, bore: 0.5, roughness: 4.6e-5, viscosity: 1.023053e-6 }, 0.416) // => 0.608
 */
export function darcyLoss(pipe: DarcyPipe, flow: number): number {
  const out = { loss: 0, slope: 0 };
  new DarcyWeisbachLoss(pipe).evaluate(flow, out);
  return out.loss;
}
