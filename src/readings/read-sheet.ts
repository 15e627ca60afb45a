import { ProblemList } from '../layout/problem.js';
import { readStandardInput, readTextFile } from '../layout/read-text.js';
import { YamlSource } from '../layout/yaml-source.js';
import type { Dimension } from '../quantity/dimension.js';
import { KINDS, parseQuantity } from '../quantity/parse.js';
import { findUnit, UNITS } from '../quantity/units.js';
import type { Column } from './columns.js';
import { type Kinds, readCsvSheet } from './read-csv.js';
import { readYamlSheet } from './read-yaml.js';
import type { Cell, Sheet, SheetRow } from './sheet.js';

/** What holds for a file of readings besides its words; a file of a bench is short. */
const MOST_ROWS = 2000;

/** One reading of a file: its sheet, and the problems found on the way. */
export class SheetReading {
  readonly problems = new ProblemList();
  private readonly unitsSeen = new Set<string>();

  /** The sheet of a file, or of standard input where it is `-`; undefined where there is none, which is reported. */
  open(path: string, kinds: Kinds): Sheet | undefined {
    const file = path === '-' ? 'standard input' : path;
    const read = path === '-' ? readStandardInput() : readTextFile(path);
    if ('fault' in read) {
      const at = read.text !== undefined && read.offset !== undefined;
      this.problems.add(
        at
          ? YamlSource.faultAt(file, read.text as string, read.offset as number, read.fault, [])
          : { file, path: [], message: read.fault },
      );
      return undefined;
    }
    return this.sheetOf(file, read.text, kinds);
  }

  sheetOf(file: string, text: string, kinds: Kinds): Sheet | undefined {
    const sheet = isYaml(file, text)
      ? readYamlSheet(file, text, kinds, this.problems)
      : readCsvSheet(file, text, kinds, this.problems);
    if (sheet && sheet.rows.length > MOST_ROWS)
      this.problems.add(sheet.rows[MOST_ROWS].place.problem(`more than ${MOST_ROWS} readings stand here`));
    return sheet;
  }

  /** Reports a column that every reading needs and that the header has not. */
  wants(sheet: Sheet, column: Column): void {
    if (!sheet.columns.has(column.name))
      this.problems.add(
        sheet.head.problem(`the column ${column.name} is missing`, {
          expected: `${column.example}, in every reading`,
        }),
      );
  }

  /** The SI value of a cell; undefined where it is blank, or wrong, which is reported. */
  value(cell: Cell | undefined, column: Column & { dimension: Dimension }): number | undefined {
    if (cell === undefined) return undefined;
    const { dimension } = column;
    const { text, unit, place } = cell;
    const own = /[a-z%°'"]/i.test(text);
    if (!own && unit === undefined && !text.includes(',')) {
      return this.once(`no unit ${column.name}`, () =>
        this.problems.add(
          place.problem(`${text} has no unit, and the header of ${column.name} says none`, {
            expected: `${column.example}, with ${KINDS[dimension].name} of one unit in the whole column`,
          }),
        ),
      );
    }
    if (!own && unit !== undefined) {
      const name = findUnit(unit.text);
      if (name === undefined || UNITS[name].dimension !== dimension) {
        return this.once(`unit ${column.name}`, () =>
          this.problems.add(
            unit.place.problem(
              name === undefined
                ? `${unit.text} is no unit we know`
                : `${name} is ${KINDS[UNITS[name].dimension].name}, and ${column.name} is ${KINDS[dimension].name}`,
              { expected: column.example },
            ),
          ),
        );
      }
    }
    const parsed = parseQuantity(own || unit === undefined ? text : `${text} ${unit.text}`, dimension, {
      example: undefined,
    });
    if ('value' in parsed) return parsed.value;
    this.problems.add(place.problem(parsed.problem));
    return undefined;
  }

  /** As `value`, and a blank cell is reported too. */
  needed(row: SheetRow, column: Column & { dimension: Dimension }): number | undefined {
    const cell = row.cells.get(column.name);
    if (cell === undefined)
      this.problems.add(
        row.place.problem(`nothing stands under ${column.name}`, {
          expected: `${KINDS[column.dimension].name}; strike the row out where it was not read`,
        }),
      );
    return this.value(cell, column);
  }

  private once(key: string, report: () => void): undefined {
    if (!this.unitsSeen.has(key)) report();
    this.unitsSeen.add(key);
    return undefined;
  }
}

/** By the ending; where that says nothing, by a list of readings in it. */
function isYaml(file: string, text: string): boolean {
  if (/\.ya?ml$/i.test(file)) return true;
  if (/\.(csv|tsv|txt)$/i.test(file)) return false;
  return /^readings\s*:/m.test(text);
}
