import { type Document, isMap, isScalar, isSeq, parseDocument, type YAMLSeq } from 'yaml';
import type { Layout, PumpName } from '../../layout/layout.js';
import { readTextFile } from '../../layout/read-text.js';
import type { Cause } from '../../study/trial/causes.js';
import { withWear } from '../../study/trial/causes.js';
import type { Ranked } from '../../study/trial/diagnose.js';

const INCH = 0.0254;
const percent = (part: number): string => `${Number((part * 100).toFixed(1))} %`;

/** The layout as a test day found it, as text; its engine stands in it, so that the file is whole by itself. */
export function calibratedLayout(layout: Layout, found: Ranked, head: readonly string[]): string {
  const document = openFile(layout.files[0]);
  const engine = document.get('engine', true);
  if (isScalar(engine) && layout.files[1]) document.set('engine', openFile(layout.files[1]).contents);
  for (const [i, cause] of found.causes.entries()) write(document, layout, cause, found.sizes[i]);
  const comment = head.map((line) => `# ${line}`).join('\n');
  return `${comment}\n${document.toString({ lineWidth: 0 })}`;
}

/** Whether a cause is something of the truck that its layout can say; a gauge or a plate is not. */
export const isOfTheLayout = ({ kind }: Cause): boolean =>
  kind !== 'instrument_off' && kind !== 'orifice_worn';

function openFile(file: string): Document {
  const read = readTextFile(file);
  if ('fault' in read) throw new Error(`${file} changed while it was read: ${read.fault}`);
  return parseDocument(read.text);
}

function write(document: Document, layout: Layout, cause: Cause, size: number): void {
  const pump: PumpName = cause.at === 'pump b' ? 'b' : 'a';
  switch (cause.kind) {
    case 'pump_worn': {
      const wear = withWear(layout, pump, size).engine.pumps[pump]?.wear ?? 0;
      document.setIn(['engine', 'pumps', pump, 'wear'], percent(wear));
      return;
    }
    case 'governor_low': {
      const { throttle } = layout;
      const set = throttle.by === 'speed' ? { a: throttle.a, b: throttle.b } : { a: 1, b: 1 };
      const low = { ...set, [pump]: set[pump] * (1 - size) };
      document.set('throttle', document.createNode({ a: percent(low.a), b: percent(low.b) }, { flow: true }));
      return;
    }
    case 'check_valve': {
      ownLists(document, ['engine', 'plumbing', 'discharge']);
      push(document, ['engine', 'plumbing', 'discharge', pump], cause, size);
      return;
    }
    case 'suction_blocked':
      push(
        document,
        layout.supply.kind === 'draft' ? ['supply', 'draft', 'suction'] : ['engine', 'plumbing', 'intake'],
        cause,
        size,
      );
      return;
    case 'orifice_worn':
    case 'instrument_off':
      return;
  }
}

/** One list for both pumps becomes a list for each. */
function ownLists(document: Document, path: string[]): void {
  const list = document.getIn(path, true);
  if (isMap(list)) return;
  document.setIn(path, document.createNode({}));
  for (const pump of ['a', 'b'])
    document.setIn([...path, pump], isSeq(list) ? list.clone() : document.createNode([]));
}

function push(document: Document, path: string[], cause: Cause, size: number): void {
  const bore = `${Number(((cause.bore ?? 0) / INCH).toFixed(3))} in`;
  const step = document.createNode({
    appliance: { k: Number(size.toFixed(1)), inside_diameter: bore },
    name: 'what the test day found in the way',
  });
  const list = document.getIn(path, true);
  if (isSeq(list)) (list as YAMLSeq).add(step);
  else document.setIn(path, document.createNode([step]));
}
