import {
  accessSync,
  constants,
  fstatSync,
  lstatSync,
  readlinkSync,
  realpathSync,
  type Stats,
  statSync,
} from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';

/** Where an answer goes when it is written to a path. */
export interface Target {
  /** The file itself, behind all links. */
  path: string;
  /** What is the same for two names of one file, and for nothing else. */
  identity: string;
  /** Undefined where there is no file yet. */
  stats?: Stats;
  /** A device, a pipe or an open descriptor: written to as it stands, since no other file can take its place. */
  asItStands: boolean;
}

const MOST_LINKS = 40;

export function ifThere<T>(look: () => T): T | undefined {
  try {
    return look();
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return undefined;
    throw error;
  }
}

/** Follows the links of a file that need not be there yet. */
function behindLinks(path: string): string {
  let at = resolve(path);
  for (let links = 0; links < MOST_LINKS; links++) {
    if (!ifThere(() => lstatSync(at))?.isSymbolicLink()) break;
    at = resolve(dirname(at), readlinkSync(at));
  }
  return join(realpathSync(dirname(at)), basename(at));
}

const ofDescriptor = (path: string): boolean => /^\/(?:dev|proc)\//.test(path);

export const identityOf = ({ dev, ino }: Stats): string => `${dev}:${ino}`;

/** What stands behind a path to write to. Throws what the system says where nothing can be written there. */
export function targetOf(path: string): Target {
  const stats = ifThere(() => statSync(path));
  if (stats?.isDirectory()) throw Object.assign(new Error(path), { code: 'EISDIR' });
  if (stats) {
    accessSync(path, constants.W_OK);
    const asItStands = !stats.isFile() || ofDescriptor(resolve(path)) || isStandardStream(stats);
    return { path: asItStands ? path : realpathSync(path), identity: identityOf(stats), stats, asItStands };
  }
  const file = behindLinks(path);
  accessSync(dirname(file), constants.W_OK | constants.X_OK);
  return { path: file, identity: file, asItStands: ofDescriptor(file) };
}

/** Standard input, output or error, where it is this very file. */
export function isStandardStream(stats: Stats): boolean {
  return [1, 2].some((stream) => {
    const own = fstatSync(stream);
    return own.isFile() && identityOf(own) === identityOf(stats);
  });
}
