#!/usr/bin/env node
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';
import { setFlagsFromString } from 'node:v8';
import { Script } from 'node:vm';

/** The same stands in src/build/code-cache.js: V8 takes a cache that was made under other flags for another's. */
const FLAGS = '--interrupt-budget=2000000';

const built = (name) => fileURLToPath(new URL(`../dist/${name}`, import.meta.url));

function readIfThere(file, encoding) {
  try {
    return readFileSync(file, encoding);
  } catch {
    return undefined;
  }
}

const program = built('cli.cjs');
const source = readIfThere(program, 'latin1');

if (source === undefined) {
  process.stderr.write('pumpyoke is not built yet: run "npm run build" in its folder first\n');
  process.exitCode = 70;
} else {
  // Compiling costs as much as answering. Where there is no cache for this very Node, V8 compiles as ever.
  const cachedData = readIfThere(built(`cli-${process.version}-${process.platform}-${process.arch}.cache`));
  // Most of what a run calls is called for a moment only: optimising it so soon costs more than it saves.
  if (cachedData) setFlagsFromString(FLAGS);
  const script = new Script(source, { filename: program, cachedData });
  script.runInThisContext()(createRequire(program), program);
}
