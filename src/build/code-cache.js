// Runs the built program once, as bin/ does, and keeps what V8 compiled for it:
// node code-cache.js PROGRAM CACHE ARGUMENT...
import { readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { setFlagsFromString } from 'node:v8';
import { Script } from 'node:vm';

const [program, cache, ...args] = process.argv.slice(2);
process.argv.splice(1, process.argv.length, program, ...args);
// The same as in bin/: V8 refuses a cache that was made under other flags.
setFlagsFromString('--interrupt-budget=2000000');
const script = new Script(readFileSync(program, 'latin1'), { filename: program });

// Not before the end, so that the cache has the functions that a run really calls.
process.on('exit', () => writeFileSync(cache, script.createCachedData()));
script.runInThisContext()(createRequire(program), program);
