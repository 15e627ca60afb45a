import { randomInt } from 'node:crypto';
import { join, parse } from 'node:path';
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
  const { layout: file, rules, level, blueprint, ...rest } = options;
  const { readBlueprint } = await import('../../drill/blueprint.js');
  const layout = await layoutIn(file);
  return {
    ...rest,
    ...(blueprint !== undefined && { blueprint: readBlueprint(blueprint) }),
    level: level as Level,
    rules: await loadRuleSet(rules),
    ...(layout && { layout }),
  };
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

/** What a trainer chooses of the look of sheet and key. */
interface Look {
  reference: boolean;
  short: boolean;
}

/** What a file is to hold. */
type Part = 'problems' | 'key' | 'both';

async function sheetDocumentOf(printed: PrintedSheet, part: Part, look: Look) {
  const { sheetDocument } = await import('../../report/drill/sheet-document.js');
  if (part === 'problems') return sheetDocument(printed, look.reference);
  const { keyBlocks, keyDocument } = await import('../../report/drill/key-document.js');
  if (part === 'key') return keyDocument(printed, look.short);
  const sheet = sheetDocument(printed, look.reference);
  const key = { kind: 'group' as const, newPage: true, blocks: keyBlocks(printed, look.short) };
  return { ...sheet, blocks: [...sheet.blocks, key] };
}

async function textFor(
  printed: PrintedSheet,
  part: Part,
  format: ReportFormat,
  out: string | undefined,
  terminal: Terminal,
  look: Look,
): Promise<string> {
  if (format === 'json') {
    const { sheetJson } = await import('../../report/drill/sheet-json.js');
    return jsonText(sheetJson(printed, part !== 'problems'));
  }
  if (format === 'csv') {
    const { sheetCsv } = await import('../../report/drill/sheet-csv.js');
    return sheetCsv(printed, part !== 'problems');
  }
  return documentText(await sheetDocumentOf(printed, part, look), format, out, terminal);
}

/** A blueprint that is a file as the text in it, so that the command on the sheet needs no file. */
export async function withBlueprint(given: GivenDrillOptions): Promise<GivenDrillOptions> {
  const { blueprint } = given;
  if (blueprint === undefined) return given;
  const { existsSync } = await import('node:fs');
  const { blueprintText, readBlueprint } = await import('../../drill/blueprint.js');
  const { readAnswerFile } = await import('./drill-answer-file.js');
  const isFile = /[./]/.test(blueprint) || existsSync(blueprint);
  const text = isFile ? readAnswerFile(blueprint).csv : blueprint;
  return { ...given, blueprint: await asked(async () => blueprintText(readBlueprint(text))) };
}

/** `exam.html` for version A of several is `exam-A.html`. */
function lettered(file: string | undefined, letter: string | undefined): string | undefined {
  if (file === undefined || letter === undefined || file === '-') return file;
  const { dir, name, ext } = parse(file);
  return join(dir, `${name}-${letter}${ext}`);
}

/** Prints the problems, and the key behind them or apart; each of several versions to files of its own. */
export async function printSheet(said: GivenDrillOptions, terminal: Terminal): Promise<void> {
  const given = await withBlueprint(said);
  const { versions = [] } = given;
  if (versions.length < 2) return printOne(given, terminal, newSeed());
  if (given.out === undefined) throw new UsageFault('several --versions go to files: give --out FILE');
  const seed = given.seed ?? newSeed();
  for (const letter of versions) {
    const { out, keyOut, formOut, giftOut } = given;
    await printOne(
      {
        ...given,
        versions: [letter],
        out: lettered(out, letter),
        keyOut: lettered(keyOut, letter),
        formOut: lettered(formOut, letter),
        giftOut: lettered(giftOut, letter),
      },
      terminal,
      seed,
    );
  }
}

async function printOne(given: GivenDrillOptions, terminal: Terminal, seed: number): Promise<void> {
  const { out, format, quiet } = reportOptions(given);
  if (given.keyOut !== undefined && given.keyOut === given.out) {
    throw new UsageFault('--out and --key-out name the same file: the key would overwrite the problems');
  }
  const printed = await makePrinted(sheetOptions(given, seed), [
    ['--out', out],
    ['--key-out', given.keyOut],
    ['--form-out', given.formOut],
    ['--gift-out', given.giftOut],
  ]);
  // Nothing holds answers unless the key is asked for, and then one file.
  const withKey = given.keyOut === undefined && given.key === true;
  if (given.giftOut !== undefined && !given.key && given.keyOut === undefined) {
    throw new UsageFault('a quiz in GIFT carries its answers: add --key to say that they may be written');
  }
  const look = { reference: given.reference === true, short: given.keyForm === 'short' };
  const part = withKey ? 'both' : 'problems';
  const texts: [string, string | undefined][] = [
    [await textFor(printed, part, format, out, terminal, look), out],
  ];
  if (given.keyOut !== undefined) {
    const file = given.keyOut === '-' ? undefined : given.keyOut;
    const told = given.json ? 'json' : given.format;
    texts.push([await textFor(printed, 'key', told ?? formatByEnding(file), file, terminal, look), file]);
  }
  if (given.formOut !== undefined) {
    const { answerForm } = await import('../../report/drill/sheet-csv.js');
    texts.push([answerForm(printed), given.formOut]);
  }
  if (given.giftOut !== undefined) {
    const { sheetGift } = await import('../../report/drill/sheet-gift.js');
    texts.push([sheetGift(printed), given.giftOut]);
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
    await put(
      csvOf([
        ['topic', 'title', 'levels'],
        ...topics.map(({ id, title, levels }) => [id, title, levels.join(' ')]),
      ]),
      out,
      quiet,
    );
  } else {
    const { topicsDocument } = await import('../../report/drill/topics-document.js');
    await put(await documentText(topicsDocument(topics), format, out, terminal), out, quiet);
  }
}
