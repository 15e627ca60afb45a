// Runs the built program once, as bin/ does, and keeps what V8 compiled for one of its files:
// node code-cache.js PROGRAM FILE CACHE ARGUMENT...
import { readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { setFlagsFromString } from 'node:v8';
import vm from 'node:vm';

/** The same stands in bin/pumpyoke.js: V8 takes a cache that was made under other flags for another's. */
const FLAGS = '--interrupt-budget=2000000';

const [program, file, cache, ...args] = process.argv.slice(2);
process.argv.splice(1, process.argv.length, program, ...args);
// The same as in bin/: V8 refuses a cache that was made under other flags.
setFlagsFromString(FLAGS);

/** @type {vm.Script | undefined} */
let kept;
vm.Script = class extends vm.Script {
  /**
   * @param {string} code
   * @param {import('node:vm').ScriptOptions} options
   */
  constructor(code, options) {
    super(code, options);
    if (options.filename === file) kept = this;
  }
};

// Not before the end, so that the cache has the functions that a run really calls.
process.on('exit', () => {
  if (kept) writeFileSync(cache, kept.createCachedData());
});
const script = new vm.Script(readFileSync(program, 'latin1'), { filename: program });
script.runInThisContext()(createRequire(program), program);
