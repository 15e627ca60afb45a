import type { Command } from 'commander';
import type { AssembleOptions } from '../assembly/assemble.js';
import type { Layout } from '../layout/layout.js';
import { sentence } from '../report/words.js';
import { UsageFault } from './usage-fault.js';

/** What a lead may change of a layout from the command line, as commander hands it over. */
export interface ValvesGiven {
  open?: string[];
  shut?: string[];
}

/** Names are set apart by commas, and the option may be given again. */
export function collectNames(text: string, before: string[] = []): string[] {
  const names = text
    .split(',')
    .map((name) => name.trim())
    .filter(Boolean);
  if (names.length === 0)
    throw new UsageFault('a name of a nozzle or line is wanted, for instance "lateral 7"');
  return [...before, ...names];
}

export function addValveOptions(command: Command): Command {
  return command
    .option(
      '--open <names>',
      'open these nozzles, or those of these lines; all opens every one',
      collectNames,
    )
    .option('--shut <names>', 'shut these; all shuts every one that --open does not name', collectNames);
}

/** Which nozzles stand open; undefined where nothing is said of them. */
export async function nozzleStateOf(
  layout: Layout,
  given: ValvesGiven,
): Promise<AssembleOptions['nozzleState'] | undefined> {
  if (!given.open && !given.shut) return undefined;
  const { nozzleStates, UnknownNozzle } = await import('../study/valves.js');
  try {
    return nozzleStates(layout, given);
  } catch (error) {
    if (error instanceof UnknownNozzle) throw new UsageFault(sentence(error.message));
    throw error;
  }
}

export function addThrottleOption(command: Command): Command {
  return command.option(
    '--throttle <throttle>',
    'part of governed speed, or the discharge pressure to hold: "80 %", "220 psi"',
  );
}

/** The layout at another throttle. */
export async function atThrottle(layout: Layout, text: string | undefined): Promise<Layout> {
  if (text === undefined) return layout;
  const { parseQuantity } = await import('../quantity/parse.js');
  const { LEAST_THROTTLE, MOST_THROTTLE } = await import('../layout/schema/steps.js');
  const part = parseQuantity(text, 'ratio');
  if ('value' in part) {
    if (part.value < LEAST_THROTTLE || part.value > MOST_THROTTLE)
      throw new UsageFault(`--throttle ${text}: from 1 % to 110 % of governed speed is wanted.`);
    return { ...layout, throttle: { by: 'speed', a: part.value, b: part.value } };
  }
  const pressure = parseQuantity(text, 'pressure');
  if ('value' in pressure && pressure.value > 0)
    return { ...layout, throttle: { by: 'discharge_pressure', discharge_pressure: pressure.value } };
  throw new UsageFault(
    `--throttle ${text}: a percentage or a pressure is wanted, for instance "80 %" or "220 psi".`,
  );
}
