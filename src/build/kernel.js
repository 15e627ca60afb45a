// Compiles the solver's kernel to WebAssembly and keeps it as a module of its own: node kernel.js
import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import asc from 'assemblyscript/asc';

const SOURCES = new URL('../network/kernel/', import.meta.url);
export const COMPILED = new URL('../network/kernel-code.ts', import.meta.url);

/** The module that src/network/kernel/ compiles to, as the text of a TypeScript file. */
export async function compileKernel() {
  /** @type {Uint8Array | undefined} */
  let binary;
  const { error, stderr } = await asc.main(
    [
      ...['index.ts', '--baseDir', fileURLToPath(SOURCES), '--outFile', 'kernel.wasm'],
      ...['-O3', '--noAssert', '--runtime', 'stub', '--importMemory'],
    ],
    {
      writeFile: (name, contents) => {
        if (name.endsWith('.wasm')) binary = /** @type {Uint8Array} */ (contents);
      },
    },
  );
  if (error || !binary) throw new Error(`the kernel does not compile: ${stderr}`);
  const text = Buffer.from(binary).toString('base64');
  const lines = text.match(/.{1,100}/g) ?? [];
  return [
    '// Compiled from src/network/kernel/ by `npm run kernel`; not to be changed by hand.',
    'export const KERNEL = [',
    ...lines.map((line) => `  '${line}',`),
    "].join('');",
    '',
  ].join('\n');
}

if (process.argv[1] === fileURLToPath(import.meta.url)) writeFileSync(COMPILED, await compileKernel());
