// Builds dist/: the program and the library in one piece each, with everything they need inside, so that the packed
// file installs without a single dependency and starts without reading a folder of packages.
import { spawnSync } from 'node:child_process';
import { mkdirSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import { thirdPartyNotices } from './third-party.js';

const root = fileURLToPath(new URL('../../', import.meta.url));
const dist = `${root}dist/`;
/** Where it is built, so that whoever runs the program meanwhile has the old one and never half of one. */
const next = `${dist}.next-${process.pid}/`;
const { version } = JSON.parse(readFileSync(`${root}package.json`, 'utf8'));

/** What CommonJS packages need of an ES module. */
const REQUIRE = "import{createRequire}from'node:module';const require=createRequire(import.meta.url);";

/**
 * What packages bring along, what stands in its place, and why.
 * @type {{ filter: RegExp, contents: string }[]}
 */
const REPLACED = [
  // Tables must count columns as the rest of a report does, and theirs comes with a list of all pictures there are.
  { filter: /^string-width$/, contents: "module.exports = require('./src/report/columns.ts').columnsOf;" },
  // Colour is decided in cli/colour.ts, and a guess at it loads all of Node's network code.
  { filter: /^#supports-color$/, contents: 'export default { stdout: false, stderr: false };' },
  // commander can start commands that are programs of their own. We have none.
  { filter: /^node:child_process$/, contents: 'module.exports = {};' },
];

/** @type {import('esbuild').Plugin} */
const replaced = {
  name: 'replaced',
  setup({ onResolve, onLoad }) {
    REPLACED.forEach(({ filter, contents }, index) => {
      onResolve({ filter }, () => ({ path: `${index}`, namespace: 'replaced', pluginData: contents }));
    });
    onLoad({ filter: /.*/, namespace: 'replaced' }, ({ pluginData }) => ({
      contents: pluginData,
      resolveDir: root,
    }));
  },
};

/** Larger than all the rest together and needed by a few layouts only, so it is a file of its own, read when asked. */
const APART = { entry: 'src/physics/pump-curve/least-squares.ts', out: 'least-squares.cjs' };

/** @type {import('esbuild').Plugin} */
const apart = {
  name: 'apart',
  setup({ onResolve, onLoad }) {
    onResolve({ filter: /\/least-squares\.js$/ }, () => ({ path: APART.out, namespace: 'apart' }));
    onResolve({ filter: /\.cjs$/, namespace: 'apart' }, ({ path }) => ({ path, external: true }));
    onLoad({ filter: /.*/, namespace: 'apart' }, ({ path }) => ({
      contents: `module.exports = require('./${path}');`,
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
  plugins: [replaced],
  charset: 'ascii',
};

const known = { PUMPYOKE_BUNDLED: 'true', PUMPYOKE_VERSION: JSON.stringify(version) };

/** One expression, a function that bin/ calls: what is imported late is inside and runs late. */
const buildProgram = () =>
  build({
    ...common,
    plugins: [replaced, apart],
    entryPoints: ['src/cli/main.ts'],
    outfile: `${next}cli.cjs`,
    format: 'cjs',
    define: { ...known, 'import.meta.url': 'PUMPYOKE_URL' },
    banner: {
      js: "(function(require,__filename){'use strict';const PUMPYOKE_URL=require('node:url').pathToFileURL(__filename).href;",
    },
    footer: { js: '})' },
  });

const buildApart = () =>
  build({ ...common, entryPoints: [APART.entry], outfile: `${next}${APART.out}`, format: 'cjs' });

const buildLibrary = () =>
  build({
    ...common,
    entryPoints: ['src/index.ts'],
    outdir: next,
    chunkNames: 'index-[hash]',
    format: 'esm',
    splitting: true,
    define: known,
    banner: { js: REQUIRE },
  });

/** Our own modules read the data, so what is checked here is what the program will find. */
async function writeCatalogue() {
  const outfile = `${next}build/catalogue.js`;
  const banner = { js: REQUIRE };
  await build({ ...common, entryPoints: ['src/build/catalogue.ts'], outfile, format: 'esm', banner });
  const { checkedRows } = await import(pathToFileURL(outfile).href);
  const { rows, models } = checkedRows(`${root}data`);
  writeFileSync(`${next}catalogue.json`, JSON.stringify(rows));
  writeFileSync(`${next}catalogue-models.json`, JSON.stringify(models));
  rmSync(`${next}build`, { recursive: true });
}

/** The names say for whom the cache is, because V8 itself looks at less than that. */
function writeCodeCache() {
  const cache = `${next}cli-${process.version}-${process.platform}-${process.arch}.cache`;
  const example = `${root}data/examples/demo.yaml`;
  const script = fileURLToPath(new URL('code-cache.js', import.meta.url));
  const { status, stderr } = spawnSync(process.execPath, [script, `${next}cli.cjs`, cache, 'check', example]);
  if (status !== 0 && status !== 1) throw new Error(`the built program cannot check the example\n${stderr}`);
}

/**
 * esbuild escapes what is in strings and leaves what is in regular expressions. A single letter beyond ASCII doubles
 * what V8 holds of the whole program and reads again for each function that it has not compiled.
 */
function escapeProgram() {
  const program = readFileSync(`${next}cli.cjs`, 'utf8');
  const escaped = (/** @type {string} */ unit) => `\\u${unit.charCodeAt(0).toString(16).padStart(4, '0')}`;
  writeFileSync(`${next}cli.cjs`, program.replace(/[\u0080-\uffff]/g, escaped));
}

function replaceDist() {
  const old = readdirSync(dist).filter((name) => !name.startsWith('.next-'));
  for (const name of old) rmSync(`${dist}${name}`, { recursive: true, force: true });
  for (const name of readdirSync(next)) renameSync(`${next}${name}`, `${dist}${name}`);
}

async function main() {
  mkdirSync(next, { recursive: true });
  const built = await Promise.all([buildProgram(), buildApart(), buildLibrary()]);
  const inputs = built.flatMap(({ metafile }) => Object.keys(metafile?.inputs ?? {}));
  writeFileSync(`${next}THIRD-PARTY.txt`, thirdPartyNotices(root, inputs));
  escapeProgram();
  await writeCatalogue();
  writeCodeCache();
  replaceDist();
}

try {
  await main();
} catch (error) {
  // esbuild has already printed what is wrong with a source file.
  if (!(error instanceof Error && 'errors' in error)) process.stderr.write(`${error}\n`);
  process.exitCode = 1;
} finally {
  rmSync(next, { recursive: true, force: true });
}
