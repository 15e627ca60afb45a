/**
 * The errors that students make, each with what to say about it. The first twenty kinds are a trainer's list of known
 * errors; the others turned up as near relations of them.
 */
export const SLIPS = {
  'elevation-reversed':
    'The elevation was taken the wrong way: pressure is added to pump uphill and taken off downhill.',
  'elevation-dropped': 'The elevation was left out: every foot or metre of height costs or gives pressure.',
  'length-not-per-hundred':
    'The length was not divided by 100: friction figures are for each 100 ft, or 100 m, of hose.',
  'point-misplaced': 'The decimal point slipped by one place: the length was divided by 10 in place of 100.',
  'flow-not-per-hundred': 'The flow was not put in hundreds before it was used in the formula.',
  'flow-not-squared': 'The flow was not squared: twice the flow makes four times the friction.',
  'one-leg-in-feeder':
    'Only one leg’s flow was used in the line before the wye: the feeder carries all legs together.',
  'legs-added': 'The losses of both legs were added: legs side by side take the higher one only.',
  'full-flow-each-line':
    'The full flow was put through each of the lines side by side: equal lines share it equally.',
  'appliance-miscounted':
    'The appliances were counted wrongly: each one in the line costs its allowance once, and only where the rule set allows for it.',
  'appliance-dropped': 'The allowance for appliances was left out.',
  'nozzle-pressure-swapped': 'The pressure of another kind of nozzle was used.',
  'nozzle-pressure-dropped':
    'The nozzle pressure was left out: the pump must make losses and nozzle pressure together.',
  'all-flow-to-end':
    'All the flow was taken to the end of the trunk: each lateral takes its share off, so later sections carry less.',
  'lateral-forgotten': 'The friction in the lateral itself was forgotten.',
  'feeder-forgotten': 'The friction in the line before the branch was forgotten.',
  'feet-and-psi-inverted': 'The conversion between height and pressure was used upside down.',
  'staging-confused':
    'Parallel and series were confused: side by side flows add at one pressure, one after the other pressures add at one flow.',
  'gauge-for-net':
    'The discharge gauge was taken for the net pump pressure: lift and intake loss are added at draft, intake pressure is taken off from a pressure source.',
  'vacuum-as-pressure':
    'The vacuum gauge was read as pressure: inches or millimetres of mercury are not psi or kPa.',
  'slope-as-height': 'The length of the hose was taken for the height: only the rise counts for elevation.',
  'wrong-coefficient': 'The friction figure of another size of hose was used.',
  'reserve-forgotten': 'The reserve that stays in the tank was not taken off.',
  'line-fill-forgotten': 'The water that fills the hose was not taken off.',
  'one-way-for-round-trip': 'One leg of the trip was counted instead of out and back.',
  'wrong-gallon': 'The wrong unit was used: US and imperial gallons, or bar and kPa, are not the same.',
  'bore-not-squared': 'The bore was not squared: twice the bore passes four times the water.',
  'root-forgotten':
    'The square root of the pressure was not taken: four times the pressure gives twice the flow.',
  'root-halved': 'The pressure was halved in place of taking its square root.',
  'friction-dropped': 'The friction in the hose was left out.',
  'one-size-throughout': 'One size of hose was taken for the whole line: each size has its own friction.',
  'sections-miscounted': 'A section of hose was counted once too often or left out.',
  'handling-forgotten': 'The minutes of filling and dumping were left out.',
  'wrong-row': 'The wrong row of the table or curve was read.',
  'wrong-power': 'The wrong power was used: pressure goes with the square of the flow.',
  'half-sum': 'The lines, legs or pumps were averaged where they should be worked one by one.',
  'residual-dropped': 'The pressure to keep at the intake was not taken off.',
  'shut-out-overlooked':
    'The weaker pump was counted though it is shut out: above its shutoff pressure its check valve stays closed and it moves no water.',
  'other-pump': 'The other pump’s curve was read.',
  'shutoff-taken': 'The shutoff pressure was taken: a pump makes less as it moves more.',
  'altitude-dropped': 'The altitude was left out: thinner air lifts less.',
  'attainable-dropped': 'The theoretical lift was taken for the attainable one.',
  'lift-dropped': 'The lift was left out.',
  'intake-dropped': 'The loss in the intake hose was left out.',
  'storey-of-nozzle': 'Every storey was counted: the first storey is at the height of the pump.',
  'unit-slip': 'A figure was used in a unit other than the formula asks for.',
  'loss-for-pressure': 'The loss was given in place of the pressure that is left.',
  'coefficient-dropped':
    'The discharge coefficient was left out: a sharp-edged orifice passes less than its bore.',
  'lower-leg': 'The pump was set for the easier leg: pump to the higher one and gate the other.',
  'method-mixed': 'Another method of friction was used than the rule set’s: methods are never mixed.',
  'one-pump-alone': 'One pump was counted where two are working.',
  'twice-one-pump':
    'Twice the flow of one pump alone was taken: the line’s own loss grows with the flow, so two pumps give less than double.',
  'ten-not-taken-off': 'The ten at the end of the hand method was not taken off.',
  'term-dropped': 'The second term of 2Q² + Q was left out.',
  'misread-gauges':
    'The two gauges were read the wrong way round: find which one is off from its usual figure.',
  'two-slips': 'Two slips were made at once.',
  'figure-mistaken': 'A figure of the problem was taken for another.',
} as const;

export type SlipId = keyof typeof SLIPS;
