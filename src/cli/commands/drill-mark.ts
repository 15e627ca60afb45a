import type { Marking } from '../../drill/marking/marking.js';
import type { PrintedSheet } from '../../report/drill/printed-sheet.js';
import { EXIT, type ExitStatus } from '../exit-status.js';
import { reportOptions } from '../options.js';
import { documentText, jsonText, put } from '../output.js';
import type { Terminal } from '../terminal.js';
import { UsageFault } from '../usage-fault.js';
import { type AnswerFile, readAnswerFile } from './drill-answer-file.js';
import { optionsIn } from './drill-command-line.js';
import { type GivenDrillOptions, type SheetOptions, sheetOptions } from './drill-options.js';
import { asked, makePrinted } from './drill-sheet.js';

const HOW_TO_SAY =
  'start the file with the row that --form-out writes, or repeat the options that made the sheet, --seed among them, and give the code at its top as --sheet';

/** What the files say about their sheet; that they all say the same is looked at when their codes are. */
function saidInFiles(files: AnswerFile[]): Partial<SheetOptions> {
  const line = files.find((file) => file.command !== undefined);
  if (!line?.command) return {};
  const options = optionsIn(line.command);
  if (!options)
    throw new UsageFault(`${line.name}: its first row does not hold the command of a sheet: ${line.command}`);
  return options;
}

/** What is said on the command line goes before what a file says; the code decides whether that was right. */
function sheetWanted(given: GivenDrillOptions, unitsSaid: boolean, files: AnswerFile[]): SheetOptions {
  const said = saidInFiles(files);
  const { units, topics, ...rest } = said;
  const seed = given.seed ?? said.seed;
  if (seed === undefined) throw new UsageFault(`nothing says which sheet was answered: ${HOW_TO_SAY}`);
  const all = given.topic || given.mix ? {} : { topic: topics?.length ? topics : undefined };
  const spoken = Object.fromEntries(Object.entries(given).filter(([, value]) => value !== undefined));
  return sheetOptions(
    { ...rest, ...all, ...spoken, units: unitsSaid ? given.units : (units ?? given.units) },
    seed,
  );
}

/** Refuses to mark by another sheet's key. */
async function refuseOthers(
  printed: PrintedSheet,
  given: GivenDrillOptions,
  files: AnswerFile[],
): Promise<void> {
  const { sameCode } = await import('../../drill/sheet-code.js');
  const codes = [
    ...files.flatMap(({ name, code }) => (code ? [{ who: name, code }] : [])),
    ...(given.sheet === undefined ? [] : [{ who: '--sheet', code: given.sheet }]),
  ];
  const other = codes.find(({ code }) => !sameCode(code, printed.code));
  if (other) {
    throw new UsageFault(
      `${other.who} says sheet ${other.code}, but this makes sheet ${printed.code}: ${printed.command}. Nothing was marked: another seed, option, rule set, layout or version made the sheet that was answered.`,
    );
  }
}

async function answersIn(files: AnswerFile[], count: number) {
  const { readAnswers } = await import('../../drill/marking/marking.js');
  const answers = files.flatMap(({ csv, student }) => readAnswers(csv, student));
  if (answers.length === 0)
    throw new UsageFault('there are no answers in it: a row with a student is wanted');
  const beyond = answers.find(({ problem }) => Number(/\d+$/.exec(problem)?.[0] ?? 0) > count);
  return { answers, beyond };
}

/** Whether all files, or the command line, name the code of the sheet. */
const isNamed = (given: GivenDrillOptions, files: AnswerFile[]): boolean =>
  given.sheet !== undefined || files.every((file) => file.code !== undefined);

async function marked(
  printed: PrintedSheet,
  given: GivenDrillOptions,
  files: AnswerFile[],
): Promise<Marking> {
  const { problems } = printed.sheet;
  const { answers, beyond } = await answersIn(files, problems.length);
  const named = isNamed(given, files);
  if (beyond && !named) {
    throw new UsageFault(
      `the answers have a problem ${beyond.problem}, but the sheet has ${problems.length}: is it another sheet? To be sure, ${HOW_TO_SAY}.`,
    );
  }
  const { markClass } = await import('../../drill/marking/marking.js');
  const marking = markClass(problems, answers);
  if (named) return marking;
  const note = `The answers do not say which sheet they belong to: look whether ${printed.code} stands at the top of the sheet that was handed out, and give it as --sheet next time.`;
  return { ...marking, notes: [note, ...marking.notes] };
}

/** Marks files of answers by the key of the sheet that they name, and says what to teach again. */
export async function markFiles(
  names: string[],
  given: GivenDrillOptions,
  unitsSaid: boolean,
  terminal: Terminal,
): Promise<ExitStatus> {
  const { out, format, quiet } = reportOptions(given);
  const files = names.map(readAnswerFile);
  const printed = await makePrinted(sheetWanted(given, unitsSaid, files));
  await refuseOthers(printed, given, files);
  const marking = await asked(() => marked(printed, given, files));
  const { code, command } = printed;
  const all = { marking, code, command, ...(given.pass !== undefined && { pass: given.pass }) };
  const { markingJson, percentOf } = await import('../../report/drill/marking-json.js');
  if (format === 'json') {
    put(jsonText(markingJson(all)), out, quiet);
  } else if (format === 'csv') {
    const { markingCsv } = await import('../../report/drill/marking-csv.js');
    put(markingCsv(all), out, quiet);
  } else {
    const { markingDocument } = await import('../../report/drill/marking-document.js');
    put(await documentText(markingDocument(all), format, out, terminal), out, quiet);
  }
  const { pass } = given;
  const failed = pass !== undefined && marking.students.some((student) => percentOf(student) < pass);
  return failed ? EXIT.no : EXIT.yes;
}
