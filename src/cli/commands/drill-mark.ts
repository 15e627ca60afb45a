import type { GivenAnswer, Marking } from '../../drill/marking/marking.js';
import type { Problem } from '../../drill/problem.js';
import { grouped } from '../../quantity/format.js';
import type { PrintedSheet } from '../../report/drill/printed-sheet.js';
import { plain } from '../../report/plain.js';
import { EXIT, type ExitStatus } from '../exit-status.js';
import { reportOptions } from '../options.js';
import { documentText, jsonText, put } from '../output.js';
import { checkOutputs, type OutputFile } from '../output-files.js';
import type { Terminal } from '../terminal.js';
import { UsageFault } from '../usage-fault.js';
import { type AnswerFile, readAnswerFile } from './drill-answer-file.js';
import { optionsIn } from './drill-command-line.js';
import { type GivenDrillOptions, type SheetOptions, sheetOptions } from './drill-options.js';
import { makePrinted, withBlueprint } from './drill-sheet.js';

const HOW_TO_SAY =
  'start the file with the row that --form-out writes, or repeat the options that made the sheet, --seed among them, and give the code at its top as --sheet';

const WHAT_IS_READ =
  'a file has a row of headings, student,1,2,3, and under it one student a row, or problem,answer and one answer a row';

const OWN_FILES = { rules: '--rules', layout: '--layout' } as const;

/**
 * What the files say about their sheet; that they all say the same is looked at when their codes are. A file of answers comes
 * from a student, and names no file that is opened here: those the trainer names.
 */
async function saidInFiles(files: AnswerFile[], given: GivenDrillOptions): Promise<Partial<SheetOptions>> {
  const file = files.find(({ command }) => command !== undefined);
  if (!file?.command) return {};
  const said = optionsIn(file.command);
  if (!said)
    throw new UsageFault(
      `${plain(file.name)}: its first row does not hold the command of a sheet: ${plain(file.command)}`,
    );
  const { RULE_SETS } = await import('../../drill/rules/rule-set.js');
  const shipped = said.rules === undefined || RULE_SETS.some((name) => name === said.rules);
  const { rules, layout, ...plainOptions } = said;
  const own = { rules: shipped ? undefined : rules, layout };
  for (const [name, option] of Object.entries(OWN_FILES) as [keyof typeof OWN_FILES, string][]) {
    const wanted = own[name];
    if (wanted === undefined || given[name] !== undefined) continue;
    throw new UsageFault(
      `${plain(file.name)} says that its sheet was made with ${option} ${plain(wanted)}. A file of answers chooses no file to open: add ${option} FILE with your own`,
    );
  }
  return { ...plainOptions, ...(shipped && rules !== undefined && { rules }) };
}

/** What is said on the command line goes before what a file says; the code decides whether that was right. */
async function sheetWanted(
  given: GivenDrillOptions,
  unitsSaid: boolean,
  files: AnswerFile[],
): Promise<SheetOptions> {
  const said = await saidInFiles(files, given);
  const { units, topics, version, ...rest } = said;
  const seed = given.seed ?? said.seed;
  if (seed === undefined) throw new UsageFault(`nothing says which sheet was answered: ${HOW_TO_SAY}`);
  const all = given.topic || given.mix ? {} : { topic: topics?.length ? topics : undefined };
  const spoken = Object.fromEntries(Object.entries(given).filter(([, value]) => value !== undefined));
  return sheetOptions(
    {
      ...rest,
      ...(version && { versions: [version] }),
      ...all,
      ...spoken,
      units: unitsSaid ? given.units : (units ?? given.units),
    },
    seed,
  );
}

/** All that marking asks of a sheet. */
type Key = Pick<PrintedSheet, 'code' | 'command'> & { problems: readonly Problem[] };

/** The key that was saved, or the sheet made again. */
async function keyFor(
  given: GivenDrillOptions,
  unitsSaid: boolean,
  files: AnswerFile[],
  names: readonly string[],
): Promise<Key> {
  const { out } = reportOptions(given);
  const outputs: OutputFile[] = [
    ['--out', out],
    ['--undecided-out', given.undecidedOut],
  ];
  if (given.keyFile !== undefined) {
    const { keyFromJson } = await import('../../report/drill/key-from-json.js');
    checkOutputs(outputs, [...names, given.keyFile]);
    const key = await keyFromJson(readAnswerFile(given.keyFile).csv);
    if (typeof key === 'string') throw new UsageFault(`${plain(given.keyFile)}: ${key}`);
    return key;
  }
  const wanted = await sheetWanted(await withBlueprint(given), unitsSaid, files);
  const { sheet, code, command } = await makePrinted(wanted, outputs, names);
  return { code, command, problems: sheet.problems };
}

interface Said {
  who: string;
  code: string;
}

/** Answers that were read, and the codes of sheets that stand among them: in a first row, or in a column of their own. */
interface Answers {
  answers: GivenAnswer[];
  codes: Said[];
  /** Whether each answer is told apart from those to other sheets. */
  named: boolean;
  notes: string[];
}

/** Marked in some ten seconds; an exam of fifty problems for two thousand students. Common practice, no source. */
const MOST_ANSWERS = 100_000;

const CODE_COLUMN = /^sheet(?: code)?$/i;

async function answersIn(files: AnswerFile[], given: GivenDrillOptions): Promise<Answers> {
  const { readAnswers } = await import('../../drill/marking/marking.js');
  const notes: string[] = [];
  const codes: Said[] = given.sheet === undefined ? [] : [{ who: '--sheet', code: given.sheet }];
  const unnamed = new Set<string>();
  const first = files.find(({ command }) => command !== undefined)?.command;
  const parts: { name: string; answers: GivenAnswer[] }[] = [];
  let count = 0;
  for (const { name, csv, student, code, command } of files) {
    // With a code it is the code that decides.
    if (!code && command !== undefined && command !== first)
      notes.push(`${name}: its first row names another sheet (${command}) than the one it was marked by`);
    if (code) codes.push({ who: name, code });
    const cells = readAnswers(csv, student, notes);
    const own = cells.filter(({ problem, text }) => CODE_COLUMN.test(problem) && text !== '');
    for (const { student: who, text } of own) codes.push({ who, code: text });
    const withCode = new Set(own.map((cell) => cell.student));
    for (const cell of cells) if (!code && !withCode.has(cell.student)) unnamed.add(cell.student);
    count += cells.length;
    if (count > MOST_ANSWERS)
      throw new UsageFault(
        `${plain(name)}: more than ${grouped(MOST_ANSWERS)} answers are more than one class gives; mark them in parts`,
      );
    parts.push({ name, answers: cells.filter(({ problem }) => !CODE_COLUMN.test(problem)) });
  }
  const { namesakesApart } = await import('../../drill/marking/by-hand.js');
  const answers = namesakesApart(parts, notes);
  if (answers.length === 0) throw new UsageFault(`there are no answers in it; ${WHAT_IS_READ}`);
  return { answers, codes, named: given.sheet !== undefined || unnamed.size === 0, notes };
}

/** Refuses to mark by another sheet's key. */
async function refuseOthers({ code, command }: Key, said: Said[]): Promise<void> {
  const { sameCode } = await import('../../drill/sheet-code.js');
  const other = said.find((each) => !sameCode(each.code, code));
  if (!other) return;
  throw new UsageFault(
    `${plain(other.who)} says sheet ${plain(other.code)}, but ${plain(command)} makes sheet ${code}. Nothing was marked: another seed, option, rule set, layout or version made the sheet that was answered.`,
  );
}

const numberIn = (problem: string): number => Number(/^\D{0,9}(\d{1,4})\.?$/.exec(problem)?.[1] ?? 0);

async function marked(
  { code: sheet, problems }: Key,
  { answers, named, notes }: Answers,
  decisions: string | undefined,
): Promise<Marking> {
  const beyond = answers.find(({ problem }) => numberIn(problem) > problems.length);
  if (beyond && !named) {
    throw new UsageFault(
      `the answers have a problem ${plain(beyond.problem)}, but the sheet has ${problems.length}: is it another sheet? To be sure, ${HOW_TO_SAY}`,
    );
  }
  const { markClass } = await import('../../drill/marking/marking.js');
  const { readDecisions } = await import('../../drill/marking/by-hand.js');
  const byHand = decisions === undefined ? [] : readDecisions(readAnswerFile(decisions).csv, notes);
  const marking = markClass(problems, answers, byHand);
  if (marking.students.length === 0) {
    throw new UsageFault(`no column of it is a problem of the sheet; ${WHAT_IS_READ}`);
  }
  const doubt = `The answers do not say which sheet they belong to: look whether ${sheet} stands at the top of the sheet that was handed out, and give it as --sheet.`;
  return { ...marking, notes: [...(named ? [] : [doubt]), ...notes, ...marking.notes] };
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
  const printed = await keyFor(given, unitsSaid, files, names);
  const answers = await answersIn(files, given);
  await refuseOthers(printed, answers.codes);
  const marking = await marked(printed, answers, given.decisions);
  const { code, command } = printed;
  const all = { marking, code, command, ...(given.pass !== undefined && { pass: given.pass }) };
  const { markingJson, percentOf } = await import('../../report/drill/marking-json.js');
  if (format === 'json') {
    await put(jsonText(markingJson(all)), out, quiet);
  } else if (format === 'csv') {
    const { markingCsv } = await import('../../report/drill/marking-csv.js');
    await put(markingCsv(all), out, quiet);
  } else {
    const { markingDocument } = await import('../../report/drill/marking-document.js');
    await put(await documentText(markingDocument(all), format, out, terminal), out, quiet);
  }
  if (given.undecidedOut !== undefined) {
    const { undecidedCsv } = await import('../../report/drill/marking-csv.js');
    await put(undecidedCsv(marking), given.undecidedOut, quiet);
  }
  const { pass } = given;
  const failed = pass !== undefined && marking.students.some((student) => percentOf(student) < pass);
  return failed ? EXIT.no : EXIT.yes;
}
