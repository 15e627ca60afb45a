// Bundled into the program: loads a part of it that is a file of its own, by what bin/ compiles files with.
const { dirname, join } = require('node:path');

/**
 * @param {string} name of the part, without its ending
 * @param {string} program the file of the program, which the part lies beside
 * @param {NodeJS.Require} load
 * @param {(file: string) => (load: NodeJS.Require, file: string, part: { exports: object }, compile: unknown) => void} compile
 */
module.exports = (name, program, load, compile) => {
  const filename = join(dirname(program), `${name}.cjs`);
  const part = { exports: {} };
  compile(filename)(load, filename, part, compile);
  return part.exports;
};
