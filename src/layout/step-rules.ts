import { type Draft, type DraftLine, inOrder } from './draft.js';
import type { Reading } from './reading.js';
import type { StepKey } from './schema/steps.js';
import type { Spot } from './spot.js';

/**
 * What a line is: `lay` runs from an outlet and may stop where a test orifice is to hang; `branch line` has an end;
 * `through` leads on to something else (plumbing, suction hose, a line of a siamese).
 */
export type LineRole = 'lay' | 'branch line' | 'plumbing' | 'siamese line';

const ENDS: readonly StepKey[] = ['nozzle', 'open_end', 'cap'];
/** What may stand between an open tank and the pump that draws from it. */
const SUCTION: readonly StepKey[] = ['hose', 'pipe', 'valve', 'check_valve', 'appliance', 'gauge'];

/** Reports what is wrong with the order of the steps of a line, and of the lines within it. */
export function checkLine(drafts: readonly Draft[], role: LineRole, reading: Reading): void {
  const steps = inOrder(drafts);
  checkEnds(steps, role, reading);
  checkTanks(steps, role, reading);
  checkBranches(steps, role, reading);
  if (role === 'plumbing') checkPumps(steps, reading);
  for (const draft of new Set(steps)) checkWithin(draft, reading);
}

function checkEnds(steps: readonly Draft[], role: LineRole, reading: Reading): void {
  const at = steps.findIndex(({ key }) => ENDS.includes(key));
  if (at < 0) return;
  const end = steps[at];
  const what = end.key.replace('_', ' ');
  if (role === 'plumbing') {
    reading.report(end.spot, `this plumbing leads on, so no ${what} can end it`, {
      hint: 'what ends in the open hangs on a branch',
    });
  } else if (role === 'siamese line') {
    reading.report(end.spot, `the lines of a siamese meet again, so no ${what} can end one of them`, {
      hint: 'lines that end apart hang on a branch',
    });
  } else if (steps[at + 1]) {
    const again = steps.indexOf(steps[at + 1]) <= at ? ', and the repeat goes round again' : '';
    reading.report(steps[at + 1].spot, `no water comes here: the ${what} before it ends the line${again}`, {
      hint: 'lines that go on past a nozzle do so from a branch',
    });
  }
}

function checkTanks(steps: readonly Draft[], role: LineRole, reading: Reading): void {
  steps.forEach((tank, index) => {
    if (tank.key !== 'tank') return;
    if (role === 'plumbing' || role === 'siamese line') {
      const what = role === 'plumbing' ? "the engine's plumbing" : 'a line of a siamese';
      reading.report(tank.spot, `an open tank cannot stand in ${what}`);
      return;
    }
    const after = steps.slice(index + 1);
    if (after.length === 0) return;
    const next = after.find(({ key }) => !SUCTION.includes(key));
    if (next?.key === 'pump') return;
    const at = next ?? after[0];
    reading.report(
      at.spot,
      'pressure ends at the open tank before it, so only a pump can take the water on',
      {
        hint: 'put a pump after the tank, or leave the tank out',
      },
    );
  });
}

function checkBranches(steps: readonly Draft[], role: LineRole, reading: Reading): void {
  const last = steps.at(-1);
  if (last?.key !== 'branch' || last.lines.length !== 1) return;
  if (role === 'plumbing' || role === 'siamese line') return;
  reading.report(last.spot, 'this branch goes one way only: one line, and no step after it', {
    key: true,
    hint: 'add the main line after it, or cap: true where its other side is closed',
  });
}

function checkPumps(steps: readonly Draft[], reading: Reading): void {
  for (const { key, spot } of steps) {
    if (key === 'pump') {
      reading.report(spot, "a pump cannot stand in the engine's plumbing", {
        hint: "the engine's own are under pumps; a booster stands in a lay",
      });
    }
  }
}

function checkWithin(draft: Draft, reading: Reading): void {
  if (draft.key === 'branch') {
    checkNames(draft.lines, reading);
    for (const line of draft.lines) {
      checkHasEnd(line, reading);
      checkLine(line.steps, 'branch line', reading);
    }
  }
  if (draft.key === 'siamese') {
    for (const line of draft.lines) {
      if (line.spot.items().length === 0 && Array.isArray(line.spot.value)) {
        reading.report(line.spot, 'a line of a siamese has at least one step');
      }
      checkLine(line.steps, 'siamese line', reading);
    }
  }
}

/** A line of a branch that just stops could be open or shut, and the answer hangs on which. */
function checkHasEnd({ spot, steps }: DraftLine, reading: Reading): void {
  const list = spot.child('steps');
  if (!list || !Array.isArray(list.value)) return;
  const last = inOrder(steps).at(-1);
  const read = steps.length === list.items().length;
  if (!read || (last && (ENDS.includes(last.key) || last.key === 'tank' || last.key === 'branch'))) return;
  const hint = 'end it with a nozzle, open_end: true or cap: true';
  if (last) reading.report(last.spot, 'this line of the branch stops here, open or shut', { hint });
  else reading.report(list, 'this line of the branch is empty, open or shut', { hint, key: true });
}

function checkNames(lines: readonly DraftLine[], reading: Reading): void {
  const seen = new Map<string, Spot>();
  for (const { name, spot } of lines) {
    if (name === undefined) continue;
    if (seen.has(name))
      reading.report(spot, `two lines of this branch are called ${name}`, { within: ['name'] });
    seen.set(name, spot);
  }
}
