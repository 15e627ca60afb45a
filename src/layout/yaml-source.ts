import {
  Composer,
  type Document,
  isAlias,
  isMap,
  isPair,
  isScalar,
  isSeq,
  Lexer,
  type Node,
  Parser,
  type YAMLError,
} from 'yaml';
import { grouped } from '../quantity/format.js';
import { excerptAt, lineStartsOf, positionAt } from './excerpt.js';
import { type PlainDocument, plainDocument } from './plain-document.js';
import type { Problem } from './problem.js';
import type { Path } from './step.js';

/** A branch in a branch adds five levels; nobody reads a layout that is nested this deep. */
export const MOST_LEVELS = 250;
/** Words, marks and spaces of a document of the largest size, written sensibly. */
const MOST_TOKENS = 200_000;
/** `%YAML 1.2` is one; each wrong one costs an error. */
const MOST_DIRECTIVES = 10;

/** A YAML document as plain values, with the place of each of them in the text. */
export class YamlSource {
  readonly file: string;
  /** Undefined where the text is no document that could be read further. */
  readonly value: unknown;
  readonly readable: boolean;
  readonly problems: Problem[] = [];
  private readonly text: string;
  private readonly starts: number[];
  private readonly root: Node | null = null;
  private readonly plain: PlainDocument | undefined;
  /** Where this document hangs in the layout. */
  private readonly prefix: Path;

  constructor(file: string, text: string, prefix: Path = []) {
    this.file = file;
    this.text = text;
    this.prefix = prefix;
    this.starts = lineStartsOf(text);
    const document = this.compose();
    this.readable = document !== undefined;
    if (!document) return;
    this.root = document.contents as Node;
    this.plain = plainDocument(this.root, {
      text,
      mostLevels: MOST_LEVELS,
      lineOf: (offset) => positionAt(this.starts, offset).line,
      fault: (node, message, hint) =>
        this.problems.push(this.problemAtRange(rangeOf(node), [], message, { hint })),
    });
    this.readable = this.plain.readable;
    this.value = this.plain.value;
  }

  /** A fault of a text that is not read as YAML at all. */
  static faultAt(file: string, text: string, offset: number, message: string, path: Path): Problem {
    return { file, path, ...excerptAt(text, lineStartsOf(text), offset, offset + 1), message };
  }

  /** The problem of whatever stands at a path; of its key rather than its value where `key` is set. */
  problem(
    path: Path,
    message: string,
    more: { expected?: string; hint?: string; key?: boolean } = {},
  ): Problem {
    const { key, ...rest } = more;
    return this.problemAtRange(this.rangeAt(path, key ?? false), path, message, rest);
  }

  position(path: Path): { file: string; line: number; column: number } {
    return { file: this.file, ...positionAt(this.starts, this.rangeAt(path, false)[0]) };
  }

  private problemAtRange(
    [start, end]: [number, number],
    path: Path,
    message: string,
    more: { expected?: string; hint?: string } = {},
  ): Problem {
    return {
      file: this.file,
      path: [...this.prefix, ...path],
      ...excerptAt(this.text, this.starts, start, end),
      message,
      ...more,
    };
  }

  /** Range of the value at a path, or of its key; where there is none, of the nearest thing around it. */
  private rangeAt(path: Path, wantsKey: boolean): [number, number] {
    let node: Node | null = this.root;
    let range = rangeOf(node);
    let keyRange: [number, number] | undefined;
    for (const step of path) {
      const inside = this.resolved(node);
      if (isMap(inside)) {
        const pair = inside.items.find(
          (item) => isPair(item) && isScalar(item.key) && String(item.key.value) === String(step),
        );
        if (!pair) return keyRange ?? firstKey(inside) ?? range;
        keyRange = rangeOf(pair.key as Node);
        node = (pair.value as Node | null) ?? null;
        range = node && isFilled(node) ? rangeOf(node) : keyRange;
      } else if (isSeq(inside)) {
        const item = inside.items[Number(step)] as Node | undefined;
        if (!item) return keyRange ?? range;
        keyRange = undefined;
        node = item;
        range = rangeOf(node);
      } else {
        return keyRange ?? range;
      }
    }
    const inside = this.resolved(node);
    if (wantsKey && keyRange) return keyRange;
    if (isMap(inside)) return keyRange ?? firstKey(inside) ?? range;
    return isSeq(inside) && keyRange ? keyRange : range;
  }

  private resolved(node: Node | null): Node | null {
    return isAlias(node) ? (this.plain?.aliases.get(node) ?? null) : node;
  }

  private compose(): Document | undefined {
    const parser = new Parser();
    const composer = new Composer({
      version: '1.2',
      schema: 'core',
      merge: false,
      uniqueKeys: false,
      stringKeys: true,
      resolveKnownTags: false,
      logLevel: 'error',
      prettyErrors: false,
    });
    const documents: Document[] = [];
    let tokens = 0;
    let directives = 0;
    for (const lexeme of new Lexer().lex(this.text)) {
      for (const token of parser.next(lexeme)) {
        if (token.type === 'directive' && ++directives > MOST_DIRECTIVES) {
          this.fault(token.offset, 'line upon line that starts with %, so it is no layout');
          return undefined;
        }
        documents.push(...composer.next(token));
      }
      if (documents.length > 1) return this.only(documents);
      if (parser.stack.length > MOST_LEVELS) {
        this.fault(parser.offset, `nested deeper than ${MOST_LEVELS} levels, so it is no layout`);
        return undefined;
      }
      if (++tokens > MOST_TOKENS) {
        this.fault(0, `more than ${grouped(MOST_TOKENS)} words and marks, so it is no layout`);
        return undefined;
      }
    }
    for (const token of parser.end()) documents.push(...composer.next(token));
    documents.push(...composer.end(documents.length === 0, this.text.length));
    return this.only(documents);
  }

  /** The one document of the text, if it could be read; what is wrong with it is noted. */
  private only(documents: Document[]): Document | undefined {
    const [document, second] = documents;
    this.noteAll([...document.errors, ...document.warnings]);
    if (second) {
      const at = second.contents ? rangeOf(second.contents)[0] : (second.range?.[0] ?? 0);
      this.fault(at, 'a second document starts here; one file holds one');
    }
    if (document.errors.length > 0 || second) return undefined;
    const { contents } = document;
    if (contents === null || (isScalar(contents) && contents.value === null && !contents.tag)) {
      this.problems.push({
        file: this.file,
        path: this.prefix,
        message: 'nothing is written here but blanks or comments',
        expected: 'a mapping of keys and values, for instance engine: engine.yaml',
      });
      return undefined;
    }
    return document;
  }

  /** Of what YAML says of one place one thing is told: the rest follows from it. */
  private noteAll(errors: readonly YAMLError[]): void {
    const byPlace = new Map<number, YAMLError>();
    for (const error of errors) {
      const [place] = error.pos;
      if (!byPlace.has(place) || error.code === 'MULTILINE_IMPLICIT_KEY') byPlace.set(place, error);
    }
    for (const error of byPlace.values()) this.problems.push(this.yamlProblem(error));
  }

  private fault(offset: number, message: string): void {
    this.problems.push(this.problemAtRange([offset, offset + 1], [], message));
  }

  private yamlProblem(error: YAMLError): Problem {
    const [start, end] = error.pos;
    const [message, hint] = yamlMessage(error, this.text.slice(start, Math.min(end, start + 60)));
    return this.problemAtRange([start, end], [], message, hint === undefined ? {} : { hint });
  }
}

/** What YAML finds wrong, in the words of someone who does not know YAML. */
function yamlMessage(error: YAMLError, text: string): [message: string, hint?: string] {
  switch (error.code) {
    case 'TAB_AS_INDENT':
      return ['a tab indents this line', 'indent with spaces'];
    case 'BAD_INDENT':
      if (/^flow/i.test(error.message))
        return ['a bracket or brace that is opened above is not closed before this line'];
      return ['the indentation of this line does not fit the lines above it'];
    case 'MISSING_CHAR':
      if (/quote$/.test(error.message)) return ['a text in quotes is not closed'];
      return [`this is not complete: ${plainly(error.message)}`];
    case 'BLOCK_AS_IMPLICIT_KEY':
      return ['two keys on one line, or a text with a colon in it', 'put a text that has a colon in quotes'];
    case 'MULTILINE_IMPLICIT_KEY':
      return [
        'a value stands here, and below it keys that are indented further',
        'indent keys of one mapping alike',
      ];
    case 'TAG_RESOLVE_FAILED':
      return [`tags such as ${text.split(/\s/)[0]} are not read here`, 'write the value alone'];
    case 'BAD_ALIAS':
      return [plainly(error.message)];
    case 'NON_STRING_KEY':
      return [
        'a list or mapping stands where a key is wanted',
        'put a text that has brackets or braces in quotes',
      ];
    default:
      return [`this cannot be read as YAML: ${plainly(error.message)}`];
  }
}

function plainly(message: string): string {
  const sentence = message.split('\n')[0].replace(/ at line .*$/, '');
  return sentence.charAt(0).toLowerCase() + sentence.slice(1);
}

function rangeOf(node: Node | null | undefined): [number, number] {
  const range = node?.range;
  return range ? [range[0], range[1]] : [0, 1];
}

function isFilled(node: Node): boolean {
  return !(isScalar(node) && node.value === null && node.source === '');
}

function firstKey(node: Node): [number, number] | undefined {
  if (!isMap(node) || node.items.length === 0) return undefined;
  const { key } = node.items[0];
  return isScalar(key) ? rangeOf(key) : undefined;
}
