import { dirname, resolve } from 'node:path';
import { pointPressures } from '../assembly/pump.js';
import { loadCatalogue } from '../catalogue/load.js';
import { type Pump, pumpSchema } from '../catalogue/schema/pump.js';
import { readTextFile } from '../layout/read-text.js';
import { Reading } from '../layout/reading.js';
import { Spot } from '../layout/spot.js';
import { YamlSource } from '../layout/yaml-source.js';
import type { Dimension } from '../quantity/dimension.js';
import { nearest } from '../quantity/nearest.js';
import { BENCH, BENCH_SET } from './bench-columns.js';
import type { Column } from './columns.js';
import { SheetReading } from './read-sheet.js';
import type { Cell, Sheet, SheetRow } from './sheet.js';

/** One reading of a pump on the bench, SI, as its instruments had it. */
export interface BenchReading {
  /** Line of the file, which is its name. */
  line: number;
  flow: number;
  /** Gauge pressures, Pa. */
  discharge: number;
  inlet: number;
  /** rpm */
  speed: number;
}

/** A pump that readings are compared with. */
export interface ComparedPump {
  /** Id in the catalogue, or the name of its file. */
  name: string;
  pump: Pump;
  /** As its file has it, units and all. */
  written: Record<string, unknown>;
}

/** A file of bench readings, SI. */
export interface BenchReadings {
  file: string;
  title?: string;
  readings: BenchReading[];
  /** Readings that say in every figure what another one says: the line, and the line that it repeats. */
  copies: { line: number; of: number }[];
  compared?: ComparedPump;
  ratedSpeed: number;
  waterTemperature?: number;
  airTemperature?: number;
  elevation?: number;
  hours?: number;
  discharge: { bore?: number; height: number; error?: number };
  inlet: { bore?: number; height: number };
}

const KINDS = { columns: Object.values(BENCH), settings: Object.values(BENCH_SET) };
/** Readings too few to fit a curve and judge it by. */
const FEWEST = 5;
const MOST_SPEED_APART = 2;
/** Heads so far from those of the pump that they are compared with are no wear, but another unit. */
const OTHER_UNIT = 2.2;

/** Reads a file of bench readings; throws `LayoutProblems` with all that is wrong in it. `against` goes before what it says. */
export function readBench(path: string, against?: string): BenchReadings {
  const reading = new SheetReading();
  const sheet = reading.open(path, KINDS);
  const bench = sheet && benchOf(sheet, reading, against);
  if (!bench || reading.problems.any) throw reading.problems.toError('the readings');
  return bench;
}

/** As `readBench`, of a text as if it stood in `file`. */
export function readBenchText(text: string, file: string, against?: string): BenchReadings {
  const reading = new SheetReading();
  const sheet = reading.sheetOf(file, text, KINDS);
  const bench = sheet && benchOf(sheet, reading, against);
  if (!bench || reading.problems.any) throw reading.problems.toError('the readings');
  return bench;
}

function benchOf(
  sheet: Sheet,
  reading: SheetReading,
  against: string | undefined,
): BenchReadings | undefined {
  const { problems } = reading;
  const set = (column: Column & { dimension: Dimension }) =>
    reading.value(sheet.settings.get(column.name), column);
  for (const column of [BENCH.flow, BENCH.discharge, BENCH.speed]) reading.wants(sheet, column);
  if (!sheet.columns.has('inlet') && !sheet.columns.has('vacuum')) reading.wants(sheet, BENCH.inlet);
  const given = sheet.settings.get('pump');
  const compared =
    against === undefined
      ? given && comparedPump(given.text, given, sheet.file, reading)
      : comparedPump(against, undefined, sheet.file, reading);
  const ratedSpeed = set(BENCH_SET.ratedSpeed) ?? compared?.pump.rated_speed;
  // A pump that is not known, or a speed that is written wrong, is reported as that.
  const named = given !== undefined || against !== undefined;
  if (ratedSpeed === undefined && !sheet.settings.has('rated speed') && (compared || !named))
    problems.add(
      sheet.head.problem('nothing says at what speed the curve is wanted', {
        expected: `a line before the readings: ${BENCH_SET.ratedSpeed.example}`,
      }),
    );
  const bores = [set(BENCH_SET.dischargeBore), set(BENCH_SET.inletBore)];
  const heights = [set(BENCH_SET.dischargeHeight) ?? 0, set(BENCH_SET.inletHeight) ?? 0];
  const rest = {
    waterTemperature: set(BENCH_SET.water),
    airTemperature: set(BENCH_SET.air),
    elevation: set(BENCH_SET.elevation),
    hours: set(BENCH_SET.hours),
    discharge: { bore: bores[0], height: heights[0], error: set(BENCH_SET.dischargeError) },
    inlet: { bore: bores[1], height: heights[1] },
  };
  if (problems.any) return undefined;
  const rows = sheet.rows.flatMap((row) => {
    const one = readingOf(row, ratedSpeed as number, reading);
    return one ? [{ ...one, row }] : [];
  });
  const copies: BenchReadings['copies'] = [];
  const readings = rows.filter(({ line, ...one }, index) => {
    const same = rows.slice(0, index).find((other) => sameReading(one, other));
    if (same) copies.push({ line, of: same.line });
    return !same;
  });
  if (problems.any) return undefined;
  const flows = new Set(readings.map(({ flow }) => flow.toPrecision(2)));
  if (readings.length < FEWEST || flows.size < 4) {
    problems.add(
      sheet.head.problem(
        `${readings.length} different readings at ${flows.size} flows are too few to fit a curve and to judge it by`,
        {
          expected: `${FEWEST} readings or more at four flows or more, the outlet shut among them; each flow twice tells how well they repeat`,
        },
      ),
    );
    return undefined;
  }
  if (compared) checkUnits(sheet, readings, compared, problems);
  if (problems.any) return undefined;
  return {
    file: sheet.file,
    title: sheet.settings.get('title')?.text,
    readings: readings.map(({ row: _, ...one }) => one),
    copies,
    compared,
    ratedSpeed: ratedSpeed as number,
    ...rest,
  };
}

const sameReading = (one: Omit<BenchReading, 'line'>, other: BenchReading): boolean =>
  one.flow === other.flow &&
  one.discharge === other.discharge &&
  one.inlet === other.inlet &&
  one.speed === other.speed;

function readingOf(row: SheetRow, ratedSpeed: number, reading: SheetReading): BenchReading | undefined {
  const { problems } = reading;
  const flow = reading.needed(row, BENCH.flow);
  const discharge = reading.needed(row, BENCH.discharge);
  const speed = reading.needed(row, BENCH.speed);
  const inlet = inletOf(row, reading);
  if (flow === undefined || discharge === undefined || speed === undefined || inlet === undefined)
    return undefined;
  const complain = (column: Column, message: string, hint: string) => {
    problems.add((row.cells.get(column.name) as Cell).place.problem(message, { hint }));
    return undefined;
  };
  if (flow < 0)
    return complain(BENCH.flow, 'a pump on the bench passes no flow backwards', 'write 0 for shutoff');
  if (!(speed > 0)) return complain(BENCH.speed, 'the pump has to turn', 'strike the row out where it stood');
  const ratio = speed / ratedSpeed;
  if (ratio > MOST_SPEED_APART || ratio < 1 / MOST_SPEED_APART)
    return complain(
      BENCH.speed,
      `${Math.round(speed)} rpm is too far from the rated ${Math.round(ratedSpeed)} rpm to be corrected to it`,
      'is it the speed of the engine before its gear? Write that of the pump',
    );
  if (discharge <= inlet)
    return complain(
      BENCH.discharge,
      'the discharge stands no higher than the inlet',
      'are the two columns exchanged, or in different units than their header says?',
    );
  return { line: row.place.line, flow, discharge, inlet, speed };
}

/** Gauge pressure at the inlet: below 0 under `inlet`, above 0 under `vacuum`. */
function inletOf(row: SheetRow, reading: SheetReading): number | undefined {
  const vacuum = row.cells.get('vacuum');
  const inlet = row.cells.get('inlet');
  if (vacuum !== undefined && inlet !== undefined) {
    reading.problems.add(
      vacuum.place.problem('the inlet is read twice here, as a pressure and as a vacuum', {
        hint: 'leave one of the two cells blank',
      }),
    );
    return undefined;
  }
  if (vacuum === undefined) {
    const value = reading.needed(row, BENCH.inlet);
    const mercury = /hg|mercury/i.test(`${inlet?.text} ${inlet?.unit?.text ?? ''}`);
    if (value !== undefined && value > 0 && mercury) {
      reading.problems.add(
        (inlet as Cell).place.problem(
          'a vacuum gauge reads inches of mercury, and this stands above no pressure',
          {
            hint: 'write a vacuum with its minus, -3, or call the column vacuum inHg',
          },
        ),
      );
      return undefined;
    }
    return value;
  }
  const value = reading.value(vacuum, BENCH.vacuum);
  if (value !== undefined && value < 0) {
    reading.problems.add(
      vacuum.place.problem('a vacuum is written without a minus', { hint: 'or call the column inlet' }),
    );
    return undefined;
  }
  return value === undefined ? undefined : -value;
}

/** The catalogue's pump of an id, or one in a file of its own, as `curve --write` writes it. */
function comparedPump(
  text: string,
  cell: Cell | undefined,
  file: string,
  reading: SheetReading,
): ComparedPump | undefined {
  const complain = (message: string, hint?: string) => {
    const problem = cell?.place.problem(message, { hint }) ?? { file: '--against', path: [], message, hint };
    reading.problems.add(problem);
    return undefined;
  };
  const catalogue = loadCatalogue();
  const found = catalogue.find('pump', text);
  if (found)
    return { name: text, pump: found, written: catalogue.row('pump', text) as Record<string, unknown> };
  const inline = text.startsWith('{');
  if (!inline && !/\.ya?ml$/i.test(text)) {
    const close = nearest(text, catalogue.ids('pump'));
    return complain(
      `the catalogue has no pump ${text.slice(0, 40)}`,
      close
        ? `did you mean ${close}?`
        : `one of ${catalogue.ids('pump').join(', ')}, or a file that ends in .yaml`,
    );
  }
  const path = cell && !inline ? resolve(dirname(file), text) : text;
  const read = inline ? { text } : readTextFile(path);
  if ('fault' in read) return complain(`the pump's file ${text.slice(0, 60)} cannot be read: ${read.fault}`);
  const source = new YamlSource(inline ? file : path, read.text);
  const own = new Reading(catalogue);
  for (const problem of source.problems) reading.problems.add(problem);
  if (!source.readable) return undefined;
  const pump = own.parse(pumpSchema, new Spot(source, [], source.value)) as Pump | undefined;
  for (const problem of own.problems.all) {
    if (!inline) reading.problems.add(problem);
    else complain(`${problem.message} in the pump`, problem.hint ?? problem.expected);
  }
  if (pump === undefined) return undefined;
  return {
    name: pump.name ?? (inline ? 'the pump of the file' : text),
    pump,
    written: source.value as Record<string, unknown>,
  };
}

/** Readings at a multiple of what the pump can make were read in another unit than their column says. */
function checkUnits(
  sheet: Sheet,
  readings: readonly BenchReading[],
  { pump, name }: ComparedPump,
  problems: SheetReading['problems'],
): void {
  const rated = pump.rated_speed;
  const rise = Math.max(
    ...readings.map((one) => (one.discharge - one.inlet) * (rated ? (rated / one.speed) ** 2 : 1)),
  );
  const most = Math.max(...pointPressures(pump).map(([, pressure]) => pressure));
  const ratio = rise / most;
  if (ratio > OTHER_UNIT || ratio < 1 / OTHER_UNIT) {
    const [more, times] = ratio > 1 ? ['', ratio] : ['less than ', 1 / ratio];
    const said =
      ratio > 1
        ? `${times.toFixed(1)} times what ${name} makes`
        : `1/${times.toFixed(1)} of what ${name} makes`;
    problems.add(
      (sheet.columns.get('discharge') ?? sheet.head).problem(
        `the highest reading comes to ${said}, which is ${more === '' ? 'more' : 'less'} than any wear or gauge explains`,
        {
          hint: 'is the discharge in the unit that its column says? 1 bar is 14.5 psi, 100 kPa 14.5 psi; is the right pump named?',
        },
      ),
    );
  }
  const largest = Math.max(...readings.map((one) => one.flow * (rated ? rated / one.speed : 1)));
  const end = pump.points[pump.points.length - 1][0];
  if (largest > OTHER_UNIT * end)
    problems.add(
      (sheet.columns.get('flow') ?? sheet.head).problem(
        `the largest flow is ${(largest / end).toFixed(1)} times the last point of ${name}`,
        { hint: 'is the flow in the unit that its column says? 1 gpm is 3.785 L/min' },
      ),
    );
}
