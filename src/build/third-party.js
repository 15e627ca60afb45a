import { existsSync, readdirSync, readFileSync } from 'node:fs';

/**
 * The folder of the package that a bundled file comes from: `node_modules/@scope/name`.
 * @param {string} input
 * @returns {string | undefined}
 */
function packageFolder(input) {
  return /^(.*node_modules\/(?:@[^/]+\/)?[^/]+)\//.exec(input)?.[1];
}

/**
 * @param {string} folder
 * @returns {string}
 */
function notice(folder) {
  const { name, version, license } = JSON.parse(readFileSync(`${folder}/package.json`, 'utf8'));
  if (!license) throw new Error(`package ${name} states no licence: it cannot be shipped`);
  // Apache-2.0 asks that a NOTICE is passed on beside the licence.
  const files = readdirSync(folder)
    .filter((each) => /^(licen[cs]e|copying|notice)/i.test(each))
    .sort();
  const texts = files.map((file) => readFileSync(`${folder}/${file}`, 'utf8').trim());
  const text = texts.length > 0 ? texts.join('\n\n') : 'The package carries no license text.';
  return `${name} ${version} (${license})\n\n${text}\n`;
}

/**
 * The licences of all packages that are inside the bundles, which their terms ask us to pass on.
 * @param {string} root
 * @param {string[]} inputs bundled files, relative to the root
 * @returns {string}
 */
export function thirdPartyNotices(root, inputs) {
  const folders = new Set(inputs.map(packageFolder).filter((folder) => folder !== undefined));
  const notices = [...folders]
    .map((folder) => `${root}${folder}`)
    .filter((folder) => existsSync(`${folder}/package.json`))
    .sort()
    .map(notice);
  return ['The program contains these packages.\n', ...notices].join(`\n${'-'.repeat(80)}\n\n`);
}
