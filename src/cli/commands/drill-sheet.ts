import { randomInt } from 'node:crypto';
import type { Level } from '../../drill/problem.js';
import type { PrintedSheet } from '../../report/drill/printed-sheet.js';
import { formatByEnding, type ReportFormat, reportOptions } from '../options.js';
import { documentText, jsonText, put } from '../output.js';
import { checkOutputs, type OutputFile } from '../output-files.js';
import type { Terminal } from '../terminal.js';
import { UsageFault } from '../usage-fault.js';
import { commandFor } from './drill-command-line.js';
import { type GivenDrillOptions, type SheetOptions, sheetOptions } from './drill-options.js';

const HIGHEST_NEW_SEED = 100_000;

/** Short enough to be typed off a sheet. */
export const newSeed = (): number => randomInt(1, HIGHEST_NEW_SEED);

/** What the drill cannot do for a reader is a fault of the command line. */
export async function asked<T>(work: () => Promise<T>): Promise<T> {
  const { DrillFault } = await import('../../drill/drill-fault.js');
  try {
    return await work();
  } catch (error) {
    if (error instanceof DrillFault) throw new UsageFault(error.message);
    throw error;
  }
}

async function layoutIn(file: string | undefined) {
  if (file === undefined) return undefined;
  await import('../plain-schemas.js');
  const { readLayout } = await import('../../layout/read-layout.js');
  return readLayout(file).layout;
}

export async function requestFor(options: SheetOptions) {
  const { loadRuleSet } = await import('../../drill/rules/load.js');
  const { layout: file, rules, level, ...rest } = options;
  const layout = await layoutIn(file);
  return { ...rest, level: level as Level, rules: await loadRuleSet(rules), ...(layout && { layout }) };
}

/** A sheet, once it is sure that what is to be written of it writes over nothing that is read. */
export function makePrinted(
  options: SheetOptions,
  outputs: readonly OutputFile[],
  inputs: readonly string[] = [],
): Promise<PrintedSheet> {
  return asked(async () => {
    const { makeSheet } = await import('../../drill/generate.js');
    const { sheetCode } = await import('../../drill/sheet-code.js');
    const request = await requestFor(options);
    const { isRuleFile } = await import('../../drill/rules/load.js');
    const rules = isRuleFile(options.rules) ? [options.rules] : [];
    checkOutputs(outputs, [...inputs, ...rules, ...(request.layout?.files ?? [])]);
    const sheet = makeSheet(request);
    return { sheet, code: sheetCode(sheet.problems), command: commandFor(options) };
  });
}

/** What a file is to hold. */
type Part = 'problems' | 'key' | 'both';

async function sheetDocumentOf(printed: PrintedSheet, part: Part) {
  const { sheetDocument } = await import('../../report/drill/sheet-document.js');
  if (part === 'problems') return sheetDocument(printed);
  const { keyBlocks, keyDocument } = await import('../../report/drill/key-document.js');
  if (part === 'key') return keyDocument(printed);
  const sheet = sheetDocument(printed);
  const key = { kind: 'group' as const, newPage: true, blocks: keyBlocks(printed) };
  return { ...sheet, blocks: [...sheet.blocks, key] };
}

async function textFor(
  printed: PrintedSheet,
  part: Part,
  format: ReportFormat,
  out: string | undefined,
  terminal: Terminal,
): Promise<string> {
  if (format === 'json') {
    const { sheetJson } = await import('../../report/drill/sheet-json.js');
    return jsonText(sheetJson(printed, part !== 'problems'));
  }
  if (format === 'csv') {
    const { sheetCsv } = await import('../../report/drill/sheet-csv.js');
    return sheetCsv(printed, part !== 'problems');
  }
  return documentText(await sheetDocumentOf(printed, part), format, out, terminal);
}

const isForPrograms = (format: ReportFormat): boolean => format === 'json' || format === 'csv';

/** Prints the problems, and the key behind them or apart. */
export async function printSheet(given: GivenDrillOptions, terminal: Terminal): Promise<void> {
  const { out, format, quiet } = reportOptions(given);
  if (given.keyOut !== undefined && given.keyOut === given.out) {
    throw new UsageFault('--out and --key-out name the same file: the key would overwrite the problems');
  }
  const printed = await makePrinted(sheetOptions(given, newSeed()), [
    ['--out', out],
    ['--key-out', given.keyOut],
    ['--form-out', given.formOut],
  ]);
  // What a program reads holds the key unless that is asked for apart; what a student reads does not unless asked.
  const withKey = given.keyOut === undefined && (given.key || isForPrograms(format));
  const part = withKey ? 'both' : 'problems';
  const texts: [string, string | undefined][] = [[await textFor(printed, part, format, out, terminal), out]];
  if (given.keyOut !== undefined) {
    const file = given.keyOut === '-' ? undefined : given.keyOut;
    const told = given.json ? 'json' : given.format;
    texts.push([await textFor(printed, 'key', told ?? formatByEnding(file), file, terminal), file]);
  }
  if (given.formOut !== undefined) {
    const { answerForm } = await import('../../report/drill/sheet-csv.js');
    texts.push([answerForm(printed), given.formOut]);
  }
  for (const [text, file] of texts) await put(text, file, quiet);
}

/** Prints what can be drilled. */
export async function printTopics(given: GivenDrillOptions, terminal: Terminal): Promise<void> {
  const { out, format, quiet } = reportOptions(given);
  const { topicList } = await import('../../drill/generate.js');
  const layout = await layoutIn(given.layout);
  checkOutputs([['--out', out]], layout?.files ?? []);
  const topics = await asked(async () => topicList(layout));
  if (format === 'json') {
    await put(jsonText({ format: 1, question: 'drill topics', topics }), out, quiet);
  } else if (format === 'csv') {
    const { csvOf } = await import('../../report/csv.js');
    await put(csvOf([['topic', 'title'], ...topics.map(({ id, title }) => [id, title])]), out, quiet);
  } else {
    const { topicsDocument } = await import('../../report/drill/topics-document.js');
    await put(await documentText(topicsDocument(topics), format, out, terminal), out, quiet);
  }
}
