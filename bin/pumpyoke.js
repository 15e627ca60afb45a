#!/usr/bin/env node
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';
import { Script } from 'node:vm';

const built = (name) => fileURLToPath(new URL(`../dist/${name}`, import.meta.url));

function readIfThere(file, encoding) {
  try {
    return readFileSync(file, encoding);
  } catch {
    return undefined;
  }
}

const program = built('cli.cjs');
const source = readIfThere(program, 'utf8');

if (source === undefined) {
  process.stderr.write('pumpyoke is not built yet: run "npm run build" in its folder first\n');
  process.exitCode = 70;
} else {
  // Compiling costs as much as answering. Where the cache is missing or of another Node, V8 compiles as ever.
  const cachedData = readIfThere(built(`cli-${process.version}-${process.platform}-${process.arch}.cache`));
  const script = new Script(source, { filename: program, cachedData });
  script.runInThisContext()(createRequire(program), program);
}
