// Builds dist/: the program and the library in one piece each, with everything they need inside, so that the packed
// file installs without a single dependency and starts without reading a folder of packages.
import { mkdirSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { basename } from 'node:path';
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

/** @type {Set<RegExp>} */
const tookHold = new Set();

/** @type {import('esbuild').Plugin} */
const replaced = {
  name: 'replaced',
  setup({ onResolve, onLoad }) {
    REPLACED.forEach(({ filter, contents }, index) => {
      onResolve({ filter }, () => {
        tookHold.add(filter);
        return { path: `${index}`, namespace: 'replaced', pluginData: contents };
      });
    });
    onLoad({ filter: /.*/, namespace: 'replaced' }, ({ pluginData }) => ({
      contents: pluginData,
      resolveDir: root,
    }));
  },
};

/**
 * Needed by few runs only and large, so they are files of their own, read when asked; and where mathjs is built from its
 * parts, because what is imported late keeps every part.
 */
const APART = [
  'src/physics/pump-curve/least-squares.ts',
  'src/report/chart/chart-svg.ts',
  'src/cli/commands/drill-run.ts',
  'src/drill/evaluate.ts',
].map((entry) => {
  const name = basename(entry, '.ts');
  return { entry, module: new RegExp(`/${name}\\.js$`), name };
});

/** @type {import('esbuild').Plugin} */
const apart = {
  name: 'apart',
  setup({ onResolve, onLoad }) {
    for (const { module, name } of APART) {
      // Packages have modules of the same names.
      onResolve({ filter: module }, ({ importer }) =>
        importer.includes('node_modules') ? undefined : { path: name, namespace: 'apart' },
      );
    }
    onLoad({ filter: /.*/, namespace: 'apart' }, ({ path }) => ({
      contents: `module.exports = require('./src/build/load-part.cjs')('${path}', __filename, require, PUMPYOKE_COMPILE);`,
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
  plugins: [replaced],
  charset: 'ascii',
};

const known = { PUMPYOKE_BUNDLED: 'true', PUMPYOKE_VERSION: JSON.stringify(version) };

/** One expression, a function that bin/ or the program calls: what is imported late is inside and runs late. */
const asFunction = (/** @type {string} */ parameters) => ({
  ...common,
  /** @type {'cjs'} */
  format: 'cjs',
  define: { ...known, 'import.meta.url': 'PUMPYOKE_URL' },
  banner: {
    js: `(function(${parameters}){'use strict';const PUMPYOKE_URL=require('node:url').pathToFileURL(__filename).href;`,
  },
  footer: { js: '})' },
});

const buildProgram = () =>
  build({
    ...asFunction('require,__filename,PUMPYOKE_COMPILE'),
    plugins: [replaced, apart],
    entryPoints: ['src/cli/main.ts'],
    outfile: `${next}cli.cjs`,
  });

const buildApart = () =>
  Promise.all(
    APART.map(({ entry, name }) =>
      build({
        ...asFunction('require,__filename,module,PUMPYOKE_COMPILE'),
        plugins: [replaced, apart],
        entryPoints: [entry],
        outfile: `${next}${name}.cjs`,
      }),
    ),
  );

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
async function writeData() {
  const entryPoints = {
    catalogue: 'src/build/catalogue.ts',
    rules: 'src/drill/rules/build-rules.ts',
    schema: 'src/build/schema.ts',
  };
  const outdir = `${next}build`;
  await build({ ...common, entryPoints, outdir, format: 'esm', banner: { js: REQUIRE } });
  const built = (/** @type {string} */ name) => import(pathToFileURL(`${outdir}/${name}.js`).href);
  const { checkedRows } = await built('catalogue');
  const { rows, models } = checkedRows(`${root}data`);
  writeFileSync(`${next}catalogue.json`, JSON.stringify(rows));
  const texts = Object.entries(models).map(([kind, rows]) => [
    kind,
    Object.fromEntries(Object.entries(rows).map(([id, row]) => [id, JSON.stringify(row)])),
  ]);
  writeFileSync(`${next}catalogue-models.json`, JSON.stringify(Object.fromEntries(texts)));
  const { readShippedRules } = await built('rules');
  writeFileSync(`${next}rules.json`, JSON.stringify(readShippedRules(`${root}data/rules/`)));
  const { schemaFiles } = await built('schema');
  writeSchemas(schemaFiles(rows));
  rmSync(outdir, { recursive: true });
}

/**
 * For editors, beside data/: layouts point to them by a path, which a build must not change.
 * @param {Record<string, string>} files
 */
function writeSchemas(files) {
  mkdirSync(`${root}schema`, { recursive: true });
  for (const [name, text] of Object.entries(files)) {
    writeFileSync(`${next}${name}`, text);
    renameSync(`${next}${name}`, `${root}schema/${name}`);
  }
}

/**
 * esbuild escapes what is in strings and leaves what is in regular expressions. A single letter beyond ASCII doubles
 * what V8 holds of the whole program and reads again for each function that it has not compiled.
 */
function escapePrograms() {
  for (const file of readdirSync(next).filter((name) => name.endsWith('.cjs'))) {
    const program = readFileSync(next + file, 'utf8');
    const escaped = (/** @type {string} */ unit) => `\\u${unit.charCodeAt(0).toString(16).padStart(4, '0')}`;
    writeFileSync(next + file, program.replace(/[\u0080-\uffff]/g, escaped));
  }
}

/** A package that was updated and no longer asks for what is replaced would ship that again, unseen. */
function refuseIdleReplacements() {
  const idle = REPLACED.filter(({ filter }) => !tookHold.has(filter)).map(({ filter }) => `${filter}`);
  if (idle.length > 0) throw new Error(`nothing asks any more for what these replace: ${idle.join(', ')}`);
}

function replaceDist() {
  const old = readdirSync(dist).filter((name) => !name.startsWith('.next-'));
  for (const name of old) rmSync(`${dist}${name}`, { recursive: true, force: true });
  for (const name of readdirSync(next)) renameSync(`${next}${name}`, `${dist}${name}`);
}

async function main() {
  mkdirSync(next, { recursive: true });
  const built = await Promise.all([buildProgram(), buildApart(), buildLibrary()]);
  refuseIdleReplacements();
  const inputs = built.flat().flatMap(({ metafile }) => Object.keys(metafile?.inputs ?? {}));
  writeFileSync(`${next}THIRD-PARTY.txt`, thirdPartyNotices(root, inputs));
  escapePrograms();
  await writeData();
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
