import { plain } from '../report/plain.js';

const WHY_NOT: Record<string, string> = {
  ENOENT: 'its folder does not exist',
  EACCES: 'it may not be written',
  EPERM: 'it may not be written',
  EISDIR: 'it is a folder',
  ENOTDIR: 'a part of its path is no folder',
  ENOSPC: 'the disk is full',
  EDQUOT: 'your share of the disk is used up',
  EFBIG: 'it would grow past the limit on the size of files',
  EROFS: 'the disk is read-only',
  EIO: 'the device failed',
  ELOOP: 'its links go round in a circle',
  ENAMETOOLONG: 'its name is too long',
  ENXIO: 'nobody reads from it',
  ETXTBSY: 'it is a program that runs',
};

/** Why a file cannot be written, in words. */
export function whyNot(error: unknown): string {
  const { code = 'unknown error' } = error as NodeJS.ErrnoException;
  return WHY_NOT[code] ?? code;
}

/** An answer that was found and then lost on its way out: one line to the reader, exit status 74. */
export class WriteFault extends Error {
  constructor(where: string, error: unknown) {
    super(`the answer could not be written to ${plain(where)}: ${whyNot(error)}`);
    this.name = 'WriteFault';
  }
}
