// Runs the built program once, as bin/ does, and keeps what V8 compiled for it:
// node code-cache.js PROGRAM CACHE ARGUMENT...
import { readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { Script } from 'node:vm';

const [program, cache, ...args] = process.argv.slice(2);
process.argv.splice(1, process.argv.length, program, ...args);
const script = new Script(readFileSync(program, 'utf8'), { filename: program });

// Not before the end, so that the cache has the functions that a run really calls.
process.on('exit', () => writeFileSync(cache, script.createCachedData()));
script.runInThisContext()(createRequire(program), program);
