// Builds dist/: the program and the library in one piece each, with everything they need inside, so that the packed
// file installs without a single dependency and starts without reading a folder of packages.
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import { thirdPartyNotices } from './third-party.js';

const root = fileURLToPath(new URL('../../', import.meta.url));
const { version } = JSON.parse(readFileSync(`${root}package.json`, 'utf8'));

/** What CommonJS packages need of an ES module. */
const BANNER = "import{createRequire}from'node:module';const require=createRequire(import.meta.url);";

/** @type {import('esbuild').BuildOptions} */
const common = {
  absWorkingDir: root,
  bundle: true,
  platform: 'node',
  format: 'esm',
  target: 'node20',
  logLevel: 'warning',
  banner: { js: BANNER },
};

/** Our own modules read the data, so what is checked here is what the program will find. */
async function writeCatalogue() {
  const outfile = `${root}dist/build/catalogue.js`;
  await build({ ...common, entryPoints: ['src/build/catalogue.ts'], outfile });
  const { checkedRows } = await import(pathToFileURL(outfile).href);
  writeFileSync(`${root}dist/catalogue.json`, JSON.stringify(checkedRows(`${root}data`)));
}

async function writeBundles() {
  const { metafile } = await build({
    ...common,
    entryPoints: [
      { in: 'src/cli/main.ts', out: 'cli' },
      { in: 'src/index.ts', out: 'index' },
    ],
    outdir: 'dist',
    chunkNames: 'part-[hash]',
    splitting: true,
    minify: true,
    metafile: true,
    define: { PUMPYOKE_BUNDLED: 'true', PUMPYOKE_VERSION: JSON.stringify(version) },
  });
  writeFileSync(`${root}dist/THIRD-PARTY.txt`, thirdPartyNotices(root, Object.keys(metafile.inputs)));
}

rmSync(`${root}dist`, { recursive: true, force: true });
mkdirSync(`${root}dist`);
try {
  await writeBundles();
  await writeCatalogue();
} catch (error) {
  // esbuild has already printed what is wrong with a source file.
  if (!(error instanceof Error && 'errors' in error)) process.stderr.write(`${error}\n`);
  process.exitCode = 1;
}
rmSync(`${root}dist/build`, { recursive: true, force: true });
