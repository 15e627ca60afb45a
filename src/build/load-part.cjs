// Bundled into the program: loads a part of it that is a file of its own, with what V8 compiled of it when it was built.
const { readFileSync } = require('node:fs');
const { dirname, join } = require('node:path');
const { Script } = require('node:vm');

/** @param {string} file */
function readIfThere(file) {
  try {
    return readFileSync(file);
  } catch {
    return undefined;
  }
}

/**
 * @param {string} name of the part, without its ending
 * @param {string} program the file of the program, which the part lies beside
 * @param {NodeJS.Require} load
 */
module.exports = (name, program, load) => {
  const beside = (/** @type {string} */ file) => join(dirname(program), file);
  const filename = beside(`${name}.cjs`);
  const cachedData = readIfThere(
    beside(`${name}-${process.version}-${process.platform}-${process.arch}.cache`),
  );
  const script = new Script(readFileSync(filename, 'latin1'), { filename, cachedData });
  const part = { exports: {} };
  script.runInThisContext()(load, filename, part);
  return part.exports;
};
