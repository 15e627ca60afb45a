import type { JsonSchema } from '../layout/json-schema.js';

/** One table of the reference. */
interface Section {
  title: string;
  words?: string;
  /** The mappings whose keys it lists; several where a place takes one of several. */
  nodes: JsonSchema[];
}

/** Parts of the catalogue that a layout may write itself, told once wherever they may stand. */
const PARTS = ['hose', 'pipe', 'valve', 'check valve', 'appliance', 'branch', 'nozzle', 'pump'];
const PART_TITLES = new Set([...PARTS, 'check_valve']);

const text = (value: unknown): string => String(value);
const one = (value: unknown): JsonSchema | undefined =>
  typeof value === 'object' && value !== null ? (value as JsonSchema) : undefined;
const many = (value: unknown): JsonSchema[] => (Array.isArray(value) ? (value as JsonSchema[]) : []);

/** The mappings with keys that may stand at a place, looked for through lists and alternatives, not through references. */
function mappings(node: JsonSchema): JsonSchema[] {
  if (node.properties) return [node];
  const inner = [
    ...many(node.anyOf),
    ...many(node.oneOf),
    ...many(node.allOf),
    ...[one(node.items), one(node.additionalProperties)].filter((found) => found !== undefined),
  ];
  return inner.flatMap(mappings);
}

/** The part of the catalogue that a place takes as a mapping of its own; a title stands on it or around it. */
function partOf(node: JsonSchema): string | undefined {
  if (node.title !== undefined && PART_TITLES.has(node.title) && !node.properties?.[node.title])
    return node.title;
  return [...many(node.anyOf), ...many(node.allOf)].map(partOf).find((found) => found !== undefined);
}

function choices(node: JsonSchema): string[] {
  if (Array.isArray(node.enum)) return node.enum.map(text);
  if (node.const !== undefined) return [text(node.const)];
  return many(node.anyOf).flatMap(choices);
}

const refersTo = (node: JsonSchema): string[] => [
  ...(typeof node.$ref === 'string' ? [node.$ref.replace('#/definitions/', '')] : []),
  ...[
    ...many(node.anyOf),
    ...many(node.allOf),
    ...[one(node.items)].filter((found) => found !== undefined),
  ].flatMap(refersTo),
];

/** An anchor as Markdown readers make it of a heading. */
const anchor = (title: string): string =>
  title
    .toLowerCase()
    .replace(/[^\w\- ]/g, '')
    .replaceAll(' ', '-');
const link = (title: string): string => `[${title}](#${anchor(title)})`;

const PART_TITLE = (part: string): string => `Own ${part.replace('_', ' ')}`;

function meaning(key: string, node: JsonSchema, sections: Map<string, Section>, title: string): string {
  const told = [node.description ?? ''];
  const words = choices(node);
  if (words.length === 1) told.push(`\`${words[0]}\``);
  else if (words.length > 0) told.push(`one of ${words.map((word) => `\`${word}\``).join(', ')}`);
  if (node.default !== undefined && typeof node.default !== 'object')
    told.push(`\`${node.default}\` unless given`);
  const part = partOf(node);
  const steps = refersTo(node).includes('steps');
  const inner = part === undefined ? mappings(node) : [];
  if (part !== undefined) {
    told.push(link(PART_TITLE(part)));
    addPart(part, node, sections);
  } else if (inner.length > 0) {
    const name = title === 'Document' ? key : `${title} ${key}`;
    addSection(name, inner, sections);
    told.push(`see ${link(name)}`);
  }
  if (refersTo(node).includes('engine')) told.push(`see ${link('engine')}`);
  if (steps) told.push(link('Steps'));
  return told
    .filter((words) => words !== '')
    .join('; ')
    .replaceAll('|', '\\|');
}

function addPart(part: string, node: JsonSchema, sections: Map<string, Section>): void {
  const title = PART_TITLE(part);
  if (!sections.has(title)) addSection(title, mappings(node), sections);
}

function addSection(title: string, nodes: JsonSchema[], sections: Map<string, Section>): void {
  if (sections.has(title)) return;
  sections.set(title, { title, words: nodes.length === 1 ? nodes[0].description : undefined, nodes });
  // Of what stands within, so that it comes behind.
  rowsOf(sections.get(title) as Section, sections);
}

/** The rows of one table: each key once, those that differ by the kind of the mapping with that kind. */
function rowsOf({ title, nodes }: Section, sections: Map<string, Section>): string[] {
  const rows = new Map<string, { kinds: string[]; cell: string }>();
  for (const node of nodes) {
    const kind = one(node.properties?.kind)?.const;
    const required = new Set(many(node.required).map(text));
    for (const [key, property] of Object.entries(node.properties ?? {})) {
      const must = required.has(key) && (nodes.length === 1 || kind !== undefined) ? ' (must)' : '';
      const cell = `\`${key}\`${must} | ${meaning(key, property, sections, title)}`;
      const known = rows.get(cell) ?? { kinds: [], cell };
      if (kind !== undefined) known.kinds.push(text(kind));
      rows.set(cell, known);
    }
  }
  const kinds = nodes.filter((node) => one(node.properties?.kind)?.const !== undefined).length;
  return [...rows.values()].map(({ kinds: own, cell }) => {
    const of =
      own.length > 0 && own.length < kinds && !cell.startsWith('`kind`') ? ` (of ${own.join(', ')})` : '';
    return `| ${cell}${of} |`;
  });
}

const INTRODUCTION = `# The layout, key by key

Generated from the schema of the layout by \`npm run reference\`; a test keeps it true. What the keys do together stands in
the guides: [builder](builder.md), [lead](lead.md), [trainer](trainer.md), [library](library.md).

A layout is one YAML document. A quantity is text with its unit, US customary or metric, mixed as you like: \`250 psi\`,
\`17 bar\`, \`1-1/2 in\`, \`4,300 ft\`, \`85 degF\`, \`12 %\`. Within braces YAML takes a comma for the end of a value, and so do
editors: write \`1000 ft\` there. Where an id of the catalogue is taken (\`pumpyoke catalogue\` lists them), the thing itself may
stand instead, as a mapping. Sizes in ids are spelt either way, \`stainless-10s-2-1/2\` or \`stainless-10s-2.5\`.

The engine is a mapping under \`engine:\`, or stands in a file of its own, whose path is then under \`engine:\`.
`;

function sectionText(section: Section, sections: Map<string, Section>): string {
  const rows = rowsOf(section, sections);
  const words = section.words === undefined ? [] : [`${section.words}.`, ''];
  return [`## ${section.title}`, '', ...words, '| key | meaning |', '|---|---|', ...rows, ''].join('\n');
}

function stepsText(steps: JsonSchema, sections: Map<string, Section>): string[] {
  const kinds = many(one(steps.items)?.anyOf);
  return kinds.flatMap((step) => {
    const title = `Step ${step.title}`;
    const section = { title, words: step.description, nodes: [step] };
    sections.set(title, section);
    return [sectionText(section, sections)];
  });
}

/** The reference of the layout in Markdown, from its JSON Schema. */
export function layoutReference(schema: JsonSchema): string {
  const definitions = schema.definitions as Record<string, JsonSchema>;
  const sections = new Map<string, Section>();
  const document: Section = { title: 'Document', nodes: [schema] };
  const top = sectionText(document, sections);
  const ofDocument = [...sections.values()].filter(({ title }) => title !== 'Document');
  addSection('engine', [definitions.engine], sections);
  const before = new Set(sections.keys());
  const steps = stepsText(definitions.steps, sections);
  const isStep = new Set(many(one(definitions.steps.items)?.anyOf).map((step) => `Step ${step.title}`));
  const within = [...sections.values()].filter(({ title }) => !before.has(title) && !isStep.has(title));
  const ordinary = [...sections.values()].filter(
    (section) => before.has(section.title) && !section.title.startsWith('Own '),
  );
  const parts = [...ofDocument, ...sections.values()].filter(
    (section, index, all) => section.title.startsWith('Own ') && all.indexOf(section) === index,
  );
  return [
    INTRODUCTION,
    top,
    ...ordinary.map((section) => sectionText(section, sections)),
    '## Steps\n\nSteps stand in the order that water meets them; one key names the kind of each.\n',
    ...steps,
    ...within
      .filter(({ title }) => !title.startsWith('Own '))
      .map((section) => sectionText(section, sections)),
    ...parts.map((section) => sectionText(section, sections)),
  ].join('\n');
}
