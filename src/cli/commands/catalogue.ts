import type { Command } from 'commander';
import type { Kind } from '../../catalogue/kind.js';
import { examplesText } from '../layout-command.js';
import { type GivenOptions, reportOptions } from '../options.js';
import { documentText, jsonText, put } from '../output.js';
import type { Session } from '../session.js';
import { UsageFault } from '../usage-fault.js';

const EXAMPLES = [
  'pumpyoke catalogue',
  'pumpyoke catalogue hose',
  'pumpyoke catalogue hose forestry',
  'pumpyoke catalogue "type 3"',
  'pumpyoke catalogue --json',
];

interface Asked {
  kind?: Kind;
  word?: string;
}

/** A first word that names no kind is one to search every kind for. */
async function askedFor(first: string | undefined, more: string[]): Promise<Asked> {
  const { KINDS } = await import('../../catalogue/kind.js');
  if (first === undefined) return {};
  const plain = first.toLowerCase().replaceAll('-', '_').replaceAll(' ', '_');
  const kind = KINDS.find((each) => each === plain || `${each}s` === plain);
  const word = (kind === undefined ? [first, ...more] : more).join(' ').trim();
  return { kind, word: word === '' ? undefined : word };
}

async function nothing({ kind, word = '' }: Asked): Promise<never> {
  const { loadCatalogue } = await import('../../catalogue/load.js');
  const { closeId } = await import('../../catalogue/ids.js');
  const { KINDS } = await import('../../catalogue/kind.js');
  const { nearest } = await import('../../quantity/nearest.js');
  const catalogue = loadCatalogue();
  const ids = (kind === undefined ? KINDS : [kind]).flatMap((each) => catalogue.ids(each));
  const meant = (kind === undefined ? nearest(word, KINDS) : undefined) ?? closeId(word, [...new Set(ids)]);
  const where =
    kind === undefined ? 'the catalogue has nothing' : `the catalogue has no ${kind.replace('_', ' ')}`;
  throw new UsageFault(
    `${where} with ${word}${meant === undefined ? `. Its kinds are ${KINDS.join(', ')}.` : `: did you mean ${meant}?`}`,
  );
}

/** `pumpyoke catalogue`: what may stand in a layout, with figures and sources. */
export function addCatalogueCommand(program: Command, session: Session): void {
  const summary = 'what may stand in a layout: ids, figures, limits, sources';
  program
    .command('catalogue')
    .summary(summary)
    .description(summary)
    .argument('[kind]', 'hose, pipe, fitting, valve, check_valve, appliance, branch, nozzle, pump or typing')
    .argument('[word...]', 'rows with these words in their id, name or note')
    .addHelpText('before', examplesText(EXAMPLES))
    .action(async (first: string | undefined, more: string[], _: unknown, self: Command) => {
      const options = reportOptions(self.optsWithGlobals<GivenOptions>());
      if (options.format === 'csv' || options.format === 'card')
        throw new UsageFault(
          `catalogue has no ${options.format}: take --format json, text, markdown or html`,
        );
      await import('../plain-schemas.js');
      const asked = await askedFor(first, more);
      const { loadCatalogue } = await import('../../catalogue/load.js');
      const { searchCatalogue } = await import('../../study/catalogue-search.js');
      const answer = searchCatalogue(loadCatalogue(), asked);
      if (asked.word !== undefined && answer.entries.length === 0) await nothing(asked);
      if (options.format === 'json') {
        const { catalogueTree } = await import('../../report/json-catalogue.js');
        put(jsonText(catalogueTree(answer, options.units)), options.out, options.quiet);
        return;
      }
      const { catalogueDocument } = await import('../../report/catalogue-document.js');
      const full = asked.word !== undefined || options.format !== 'text';
      const document = catalogueDocument(answer, full);
      put(
        await documentText(document, options.format, options.out, session.terminal),
        options.out,
        options.quiet,
      );
    });
}
