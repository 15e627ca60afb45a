import { typingPoints } from '../catalogue/schema/typing.js';
import { nearest } from '../quantity/nearest.js';
import type { TypingAsked } from './layout.js';
import type { Reading } from './reading.js';
import type { LayoutDocument } from './schema/layout.js';
import type { Spot } from './spot.js';

/** What is asked of the engine: a class of a table of the catalogue, or the layout's own requirement. */
export function readTyping(
  given: LayoutDocument['typing'],
  spot: Spot | undefined,
  reading: Reading,
): TypingAsked | undefined {
  if (!given || !spot) return undefined;
  if (!('scheme' in given || 'custom' in given)) {
    return checked({ requirement: given as TypingAsked['requirement'], ...spot.placed() }, spot, reading);
  }
  const { scheme, class: name, custom, pressure } = given;
  if (custom) return checked({ requirement: custom, ...spot.placed() }, spot, reading);
  if (scheme === undefined || name === undefined) return undefined;
  const table = reading.catalogue.find('typing', scheme);
  if (!table) return reading.unknownId('typing', scheme, spot.child('scheme') ?? spot);
  if (!Object.hasOwn(table.classes, name)) {
    const classes = Object.keys(table.classes);
    const close = nearest(name, classes);
    return reading.report(spot.child('class') ?? spot, `${scheme} has no class ${name}`, {
      expected: `one of ${classes.join(', ')}`,
      hint: close === undefined ? undefined : `did you mean ${close}?`,
    });
  }
  const requirement = table.classes[name];
  return checked({ scheme, class: name, table, requirement, pressure, ...spot.placed() }, spot, reading);
}

/** A requirement that can be judged: each of its points has a pressure, its own or the layout's. */
function checked(asked: TypingAsked, spot: Spot, reading: Reading): TypingAsked | undefined {
  const open = typingPoints(asked.requirement).some((point) => point.pressure === undefined);
  if (!open || asked.pressure !== undefined) return asked;
  return reading.report(spot, 'this typing states a flow and no pressure to make it at', {
    key: true,
    hint: 'add the pressure to judge by: pressure: 150 psi',
  });
}
