import { randomBytes } from 'node:crypto';
import {
  closeSync,
  constants,
  fchmodSync,
  fchownSync,
  fstatSync,
  fsyncSync,
  openSync,
  renameSync,
  type Stats,
  unlinkSync,
} from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { identityOf, type Target, targetOf } from './target.js';
import { writeAll } from './write-all.js';
import { WriteFault } from './write-fault.js';

/** A name may have 255 bytes, and what is put around it needs some. */
const LONGEST_STEM = 40;

const SIGNALS = ['SIGINT', 'SIGTERM', 'SIGHUP'] as const;
let heldOff = false;

/**
 * A signal that comes while a file is written is obeyed once it is in its place or gone, a moment later: there is never half
 * of one, nor one that is left lying.
 */
function holdOffSignals(): void {
  if (heldOff) return;
  heldOff = true;
  for (const signal of SIGNALS) process.once(signal, () => process.kill(process.pid, signal));
}

const besideOf = (path: string): string =>
  join(dirname(path), `.${basename(path).slice(0, LONGEST_STEM)}.${randomBytes(9).toString('hex')}.part`);

/** The new file is whose the old one was, and who may read or write it stays as it was. */
function keepOwnerAndMode(file: number, { uid, gid, mode }: Stats): void {
  const own = fstatSync(file);
  if (own.uid !== uid || own.gid !== gid) {
    try {
      fchownSync(file, uid, gid);
    } catch {}
  }
  fchmodSync(file, mode & 0o7777);
}

function inPlace(path: string, text: string, flags: number): void {
  const file = openSync(path, flags);
  try {
    writeAll(file, text);
  } finally {
    closeSync(file);
  }
}

function filled(beside: string, text: string, stats: Stats | undefined): void {
  const file = openSync(beside, 'wx', 0o666);
  try {
    if (stats) keepOwnerAndMode(file, stats);
    writeAll(file, text);
    // A full disk is told of here at the latest, and not after the old file is gone.
    fsyncSync(file);
  } finally {
    closeSync(file);
  }
}

const CANNOT_REPLACE = new Set(['EACCES', 'EPERM', 'EBUSY', 'EROFS', 'EXDEV']);

/** Beside the file and then in its place, so that under its name there is the old answer or the new one, whole. */
function replaced({ path, stats }: Target, text: string): void {
  const beside = besideOf(path);
  try {
    filled(beside, text, stats);
    renameSync(beside, path);
  } catch (error) {
    try {
      unlinkSync(beside);
    } catch {}
    // A file may be written in a folder that may not, and one that is mounted by itself has to stay.
    const { code = '' } = error as NodeJS.ErrnoException;
    if (!stats || !CANNOT_REPLACE.has(code)) throw error;
    inPlace(path, text, constants.O_WRONLY | constants.O_TRUNC);
  }
}

/** Standard output or error under another name is written to where it stands, and not from its start. */
function streamOf({ stats }: Target): number | undefined {
  if (!stats) return undefined;
  return [1, 2].find((stream) => identityOf(fstatSync(stream)) === identityOf(stats));
}

/** Writes a file whole or not at all. Throws `WriteFault`. */
export function writeFile(path: string, text: string): void {
  try {
    const target = targetOf(path);
    const stream = target.asItStands ? streamOf(target) : undefined;
    if (stream !== undefined) {
      writeAll(stream, text);
    } else if (target.asItStands) {
      inPlace(path, text, constants.O_WRONLY | (target.stats?.isFile() ? constants.O_TRUNC : 0));
    } else {
      holdOffSignals();
      replaced(target, text);
    }
  } catch (error) {
    throw new WriteFault(path, error);
  }
}
