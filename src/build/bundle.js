// Builds dist/: the program and the library in one piece each, with everything they need inside, so that the packed
// file installs without a single dependency and starts without reading a folder of packages.
import { spawnSync } from 'node:child_process';
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import { thirdPartyNotices } from './third-party.js';

const root = fileURLToPath(new URL('../../', import.meta.url));
const dist = `${root}dist/`;
const { version } = JSON.parse(readFileSync(`${root}package.json`, 'utf8'));

/** What CommonJS packages need of an ES module. */
const REQUIRE = "import{createRequire}from'node:module';const require=createRequire(import.meta.url);";

/**
 * The tables must count columns as the rest of a report does, and the package that they bring for it carries a table
 * of all pictures, which every start would have to read.
 * @type {import('esbuild').Plugin}
 */
const oneWidth = {
  name: 'one-width',
  setup({ onResolve, onLoad }) {
    onResolve({ filter: /^string-width$/ }, () => ({ path: 'string-width', namespace: 'one-width' }));
    onLoad({ filter: /.*/, namespace: 'one-width' }, () => ({
      contents: "module.exports = require('./src/report/columns.ts').columnsOf;",
      resolveDir: root,
    }));
  },
};

/** @type {import('esbuild').BuildOptions} */
const common = {
  absWorkingDir: root,
  bundle: true,
  platform: 'node',
  target: 'node20',
  logLevel: 'warning',
  minify: true,
  metafile: true,
  plugins: [oneWidth],
};

const known = { PUMPYOKE_BUNDLED: 'true', PUMPYOKE_VERSION: JSON.stringify(version) };

/** One expression, a function that bin/ calls: what is imported late is inside and runs late. */
const buildProgram = () =>
  build({
    ...common,
    entryPoints: ['src/cli/main.ts'],
    outfile: 'dist/cli.cjs',
    format: 'cjs',
    define: { ...known, 'import.meta.url': 'PUMPYOKE_URL' },
    banner: {
      js: "(function(require,__filename){'use strict';const PUMPYOKE_URL=require('node:url').pathToFileURL(__filename).href;",
    },
    footer: { js: '})' },
  });

const buildLibrary = () =>
  build({
    ...common,
    entryPoints: ['src/index.ts'],
    outfile: 'dist/index.js',
    format: 'esm',
    define: known,
    banner: { js: REQUIRE },
  });

/** Our own modules read the data, so what is checked here is what the program will find. */
async function writeCatalogue() {
  const outfile = `${dist}build/catalogue.js`;
  const banner = { js: REQUIRE };
  await build({ ...common, entryPoints: ['src/build/catalogue.ts'], outfile, format: 'esm', banner });
  const { checkedRows } = await import(pathToFileURL(outfile).href);
  writeFileSync(`${dist}catalogue.json`, JSON.stringify(checkedRows(`${root}data`)));
  rmSync(`${dist}build`, { recursive: true });
}

/** The names say for whom the cache is, because V8 itself looks at less than that. */
function writeCodeCache() {
  const cache = `${dist}cli-${process.version}-${process.platform}-${process.arch}.cache`;
  const example = `${root}data/examples/demo.yaml`;
  const script = fileURLToPath(new URL('code-cache.js', import.meta.url));
  const { status, stderr } = spawnSync(process.execPath, [script, `${dist}cli.cjs`, cache, 'check', example]);
  if (status !== 0 && status !== 1) throw new Error(`the built program cannot check the example\n${stderr}`);
}

async function main() {
  rmSync(dist, { recursive: true, force: true });
  mkdirSync(dist);
  const built = await Promise.all([buildProgram(), buildLibrary()]);
  const inputs = built.flatMap(({ metafile }) => Object.keys(metafile?.inputs ?? {}));
  writeFileSync(`${dist}THIRD-PARTY.txt`, thirdPartyNotices(root, inputs));
  await writeCatalogue();
  writeCodeCache();
}

try {
  await main();
} catch (error) {
  // esbuild has already printed what is wrong with a source file.
  if (!(error instanceof Error && 'errors' in error)) process.stderr.write(`${error}\n`);
  process.exitCode = 1;
}
