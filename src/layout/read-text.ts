import { closeSync, constants, fstatSync, openSync, readSync } from 'node:fs';

/** A layout of a hundred thousand steps written out by hand would fit; a file that is larger is something else. */
export const MOST_BYTES = 1_000_000;

export type ReadText = { text: string } | { fault: string; offset?: number; text?: string };

const BY_CODE: Record<string, string> = {
  ENOENT: 'no such file',
  ENOTDIR: 'part of the path is a file, not a folder',
  EACCES: 'no permission to read it',
  EPERM: 'no permission to read it',
  ELOOP: 'its links go round in a circle',
  ENAMETOOLONG: 'its name is too long',
  EISDIR: 'it is a folder, not a file',
  ENXIO: 'it is a device, not a file',
};

function faultOf(error: unknown): string {
  const code = (error as NodeJS.ErrnoException).code ?? '';
  return BY_CODE[code] ?? `it cannot be read (${code || 'unknown error'})`;
}

/** The text of a regular file of modest size. Never waits: a pipe or device is refused, not read. */
export function readTextFile(path: string): ReadText {
  if (path.includes('\0')) return { fault: 'no such file' };
  let file: number;
  try {
    file = openSync(path, constants.O_RDONLY | (constants.O_NONBLOCK ?? 0));
  } catch (error) {
    return { fault: faultOf(error) };
  }
  try {
    const status = fstatSync(file);
    if (status.isDirectory()) return { fault: 'it is a folder, not a file' };
    if (status.isFIFO()) return { fault: 'it is a pipe, not a file; give - to read standard input' };
    if (!status.isFile()) return { fault: 'it is a device, not a file' };
    if (status.size > MOST_BYTES) return { fault: tooLarge() };
    return decode(readAll(file));
  } catch (error) {
    return { fault: faultOf(error) };
  } finally {
    closeSync(file);
  }
}

/** The text on standard input, up to the size that a file may have. */
export function readStandardInput(): ReadText {
  try {
    return decode(readAll(0));
  } catch (error) {
    return { fault: faultOf(error) };
  }
}

function tooLarge(): string {
  return `it is larger than ${MOST_BYTES / 1e6} MB, so it is no layout`;
}

const RETRY_MILLISECONDS = 10;

function readAll(file: number): Buffer {
  const chunks: Buffer[] = [];
  let total = 0;
  while (total <= MOST_BYTES) {
    const chunk = Buffer.allocUnsafe(65_536);
    let read: number;
    try {
      read = readSync(file, chunk, 0, chunk.length, null);
    } catch (error) {
      const { code } = error as NodeJS.ErrnoException;
      if (code === 'EOF') break;
      if (code !== 'EAGAIN') throw error;
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, RETRY_MILLISECONDS);
      continue;
    }
    if (read === 0) break;
    chunks.push(chunk.subarray(0, read));
    total += read;
  }
  return Buffer.concat(chunks);
}

function decode(bytes: Buffer): ReadText {
  if (bytes.length > MOST_BYTES) return { fault: tooLarge() };
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
