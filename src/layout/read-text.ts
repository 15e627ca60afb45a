import { type ReadBytes, readBytes, readStandardBytes } from './read-bytes.js';

/** A layout of a hundred thousand steps written out by hand would fit; a file that is larger is something else. */
export const MOST_BYTES = 1_000_000;

export type ReadText = { text: string } | { fault: string; offset?: number; text?: string };

const BOUNDS = { most: MOST_BYTES, tooLarge: `it is larger than ${MOST_BYTES / 1e6} MB, so it is no layout` };

const decoded = (read: ReadBytes): ReadText => ('fault' in read ? read : decode(read.bytes));

/** The text of a regular file of modest size. Never waits: a pipe or device is refused, not read. */
export const readTextFile = (path: string): ReadText => decoded(readBytes(path, BOUNDS));

/** The text on standard input, up to the size that a file may have. */
export const readStandardInput = (): ReadText => decoded(readStandardBytes(BOUNDS));

function decode(bytes: Buffer): ReadText {
  const mark = bytes.length >= 2 ? bytes.readUInt16BE(0) : 0;
  if (mark === 0xfeff || mark === 0xfffe) return { fault: 'it is UTF-16 text; save it as UTF-8' };
  if (bytes.includes(0)) return { fault: 'it is no text (it holds a NUL byte)' };
  const text = new TextDecoder('utf-8').decode(bytes);
  try {
    new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return { fault: 'it is not UTF-8 text from here on', offset: Math.max(0, text.indexOf('\ufffd')), text };
  }
  const control = /[^\t\n\r\x20-\x7e\x85\u00a0-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]/u.exec(text);
  if (control)
    return {
      fault: 'a control character stands here, which YAML does not allow',
      offset: control.index,
      text,
    };
  return { text };
}
