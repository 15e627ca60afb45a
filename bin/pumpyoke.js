#!/usr/bin/env node
// CommonJS, as package.json beside it says: Node has that loader ready before it has the one for modules.
const { readFileSync } = require('node:fs');
const { join } = require('node:path');
const { setFlagsFromString } = require('node:v8');
const { Script } = require('node:vm');

/** The same stands in src/build/code-cache.js: V8 takes a cache that was made under other flags for another's. */
const FLAGS = '--interrupt-budget=2000000';

const built = (name) => join(__dirname, '../dist', name);

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
  script.runInThisContext()(require, program);
}
