#!/usr/bin/env node
// CommonJS, as package.json beside it says: Node has that loader ready before it has the one for modules.
const { existsSync } = require('node:fs');
const { join } = require('node:path');
const cachedScript = require('./cached-script.js');

const program = join(__dirname, '../dist/cli.cjs');

if (existsSync(program)) {
  // A word that names a command, and nothing that could name a file elsewhere.
  const [, , first = ''] = process.argv;
  const word = /^[a-z]{1,16}$/.test(first) ? first : 'other';
  cachedScript(program, word)(require, program, (/** @type {string} */ part) => cachedScript(part, word));
} else {
  process.stderr.write('pumpyoke is not built yet: run "npm run build" in its folder first\n');
  process.exitCode = 70;
}
