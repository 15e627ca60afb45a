import { closeId } from '../catalogue/ids.js';
import { typingPoints } from '../catalogue/schema/typing.js';
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
    const close = classMeant(name, classes);
    return reading.report(spot.child('class') ?? spot, `${scheme} has no class ${name}`, {
      expected: `one of ${classes.join(', ')}`,
      hint: close === undefined ? undefined : `did you mean ${close}?`,
    });
  }
  const requirement = table.classes[name];
  if (pressure !== undefined && typingPoints(requirement).every((point) => point.pressure !== undefined)) {
    return reading.report(spot.child('pressure') ?? spot, `${scheme} ${name} states its own pressure`, {
      key: true,
      hint: 'leave pressure out; for a pressure of your own write custom: {flow: 150 gpm, pressure: 250 psi}',
    });
  }
  return checked({ scheme, class: name, table, requirement, pressure, ...spot.placed() }, spot, reading);
}

const ROMAN = ['i', 'ii', 'iii', 'iv', 'v', 'vi', 'vii'];

/** The class that was meant, as people say it too: `Type 3`, `type III engine`. */
function classMeant(name: string, classes: readonly string[]): string | undefined {
  const said =
    /^(?:(engine|tender|tactical|support)s?\b)?[\s,-]*type[\s_-]*(\d+|[ivx]+)\b[\s,-]*(engine|tender|tactical|support)?/i.exec(
      name,
    );
  if (!said) return closeId(name, classes);
  const number = /\d/.test(said[2]) ? said[2] : String(ROMAN.indexOf(said[2].toLowerCase()) + 1);
  const word = (said[1] ?? said[3] ?? 'engine').toLowerCase();
  const meant = classes.filter((id) => id === `${word}-${number}`);
  return meant.length === 1 ? meant[0] : undefined;
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
