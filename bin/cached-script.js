// Compiling the program costs as much as answering. What V8 has compiled of it is kept from one run to the next, in the folder
// that a system has for such things, and never ships: it is for one version of Node on one machine.
const { createHash } = require('node:crypto');
const { mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } = require('node:fs');
const { homedir } = require('node:os');
const { basename, join } = require('node:path');
const { Script } = require('node:vm');

/** Bytes of the hash that a kept file begins with. */
const HASH = 20;
/** Answered, yes or no: what such a run has compiled is worth keeping. */
const ANSWERED = [0, 1];

/** Where kept files go; undefined where there is no such place, or where the reader has asked Node for none. */
function folder() {
  const { NODE_DISABLE_COMPILE_CACHE, XDG_CACHE_HOME, LOCALAPPDATA } = process.env;
  if (NODE_DISABLE_COMPILE_CACHE) return undefined;
  try {
    return join(XDG_CACHE_HOME || LOCALAPPDATA || join(homedir(), '.cache'), 'pumpyoke');
  } catch {
    return undefined;
  }
}

/** What ties kept data to a source: another source, or data that was damaged, has another hash. V8 looks at lengths alone. */
const hashOf = (source, data) => createHash('sha1').update(source).update(data).digest();

/** The data of a kept file, if it is sound and of this source. */
function sound(file, source) {
  try {
    const kept = readFileSync(file);
    const data = kept.subarray(HASH);
    return hashOf(source, data).equals(kept.subarray(0, HASH)) ? data : undefined;
  } catch {
    return undefined;
  }
}

function discard(file) {
  try {
    rmSync(file, { force: true });
  } catch {
    // Where it could not be written there is nothing to take away.
  }
}

/** Keeps what has been compiled of a script once the run has answered; a disk that will not have it is no matter. */
function keepAtExit(script, source, into, file) {
  process.on('exit', (status) => {
    if (!ANSWERED.includes(status)) return;
    const beside = `${file}.${process.pid}`;
    try {
      mkdirSync(into, { recursive: true });
      const data = script.createCachedData();
      writeFileSync(beside, Buffer.concat([hashOf(source, data), data]), { mode: 0o600 });
      renameSync(beside, file);
    } catch {
      discard(beside);
    }
  });
}

/**
 * Compiles a file of one expression and gives the value of that. `word` is the command that runs: each calls other functions,
 * and only what is called has been compiled.
 */
module.exports = function cachedScript(filename, word) {
  const bytes = readFileSync(filename);
  const into = folder();
  const name = `${basename(filename, '.cjs')}-${word}-${process.version}-${process.platform}-${process.arch}`;
  const file = into && join(into, name);
  const cachedData = file && sound(file, bytes);
  const script = new Script(bytes.latin1Slice(), { filename, cachedData });
  if (file && (cachedData === undefined || script.cachedDataRejected)) keepAtExit(script, bytes, into, file);
  return script.runInThisContext();
};
