import { closeSync, constants, fstatSync, openSync, readSync } from 'node:fs';

/** What may be read: how much of it, and whether a pipe may bring it as well as a file. */
export interface ReadBounds {
  most: number;
  /** Said where there is more: `it is larger than 1 MB, so it is no layout`. */
  tooLarge: string;
  pipes?: boolean;
}

export type ReadBytes = { bytes: Buffer } | { fault: string };

const BY_CODE: Record<string, string> = {
  ENOENT: 'no such file',
  ENOTDIR: 'part of the path is a file, not a folder',
  EACCES: 'no permission to read it',
  EPERM: 'no permission to read it',
  ELOOP: 'its links go round in a circle',
  ENAMETOOLONG: 'its name is too long',
  EISDIR: 'it is a folder, not a file',
  EIO: 'the disk or device failed while it was read',
  ENXIO: 'it is a device, not a file',
};

function faultOf(error: unknown): { fault: string } {
  const code = (error as NodeJS.ErrnoException).code ?? '';
  return { fault: BY_CODE[code] ?? `it cannot be read (${code || 'unknown error'})` };
}

/** A regular file of modest size. Never waits for one to come: a device is refused, and a pipe where none is asked for. */
export function readBytes(path: string, bounds: ReadBounds): ReadBytes {
  if (path.includes('\0')) return { fault: 'no such file' };
  let file: number;
  try {
    file = openSync(path, constants.O_RDONLY | (constants.O_NONBLOCK ?? 0));
  } catch (error) {
    return faultOf(error);
  }
  try {
    const status = fstatSync(file);
    if (status.isDirectory()) return { fault: 'it is a folder, not a file' };
    if (status.isFIFO()) {
      if (!bounds.pipes) return { fault: 'it is a pipe, not a file; give - to read standard input' };
    } else {
      if (!status.isFile()) return { fault: 'it is a device, not a file' };
      if (status.size > bounds.most) return { fault: bounds.tooLarge };
    }
    return readAll(file, bounds);
  } catch (error) {
    return faultOf(error);
  } finally {
    closeSync(file);
  }
}

/** Standard input, up to the size that a file may have. */
export function readStandardBytes(bounds: ReadBounds): ReadBytes {
  try {
    return readAll(0, bounds);
  } catch (error) {
    return faultOf(error);
  }
}

const RETRY_MILLISECONDS = 10;

function readAll(file: number, { most, tooLarge }: ReadBounds): ReadBytes {
  const chunks: Buffer[] = [];
  let total = 0;
  while (total <= most) {
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
  return total > most ? { fault: tooLarge } : { bytes: Buffer.concat(chunks) };
}
