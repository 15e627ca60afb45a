#!/usr/bin/env node
import { existsSync } from 'node:fs';

const program = new URL('../dist/cli.js', import.meta.url);

if (existsSync(program)) {
  await import(program.href);
} else {
  process.stderr.write('pumpyoke is not built yet: run "npm run build" in its folder first\n');
  process.exitCode = 70;
}
