import * as engine from 'epanet-js';
import type { Network, NetworkLink } from '../../src/network/network.js';
import { CUBIC_FOOT, FOOT, INCH } from './units.js';

/**
 * A link that EPANET holds shut loses 1e8 ft for each cfs (CBIG in its source), so that a little passes it: 0.0013 gpm at
 * 130 psi. This is that law in m per m3/s.
 */
export const EPANET_SHUT_SLOPE = (1e8 * FOOT) / CUBIC_FOOT;

/** What EPANET needs of a link beyond its law. */
export interface EpanetHint {
  /** Inside diameter, m: EPANET starts each pipe at 1 ft/s in it. */
  bore?: number;
  /** Flows, m3/s, at which a pump's curve is read off for EPANET: three make a power curve, more make a table. */
  sampleFlows?: number[];
}

export interface EpanetOptions {
  /** Largest energy residual of a link, m. */
  headTolerance?: number;
  /** Largest change of a flow in the last iteration, m3/s. */
  flowTolerance?: number;
}

export interface EpanetSolution {
  /** m by node. */
  heads: Float64Array;
  /** m3/s by link. */
  flows: Float64Array;
  /** Links that EPANET holds shut: check valves, and pumps that meet more than their shutoff head. It reports no flow in them. */
  shut: number[];
  iterations: number;
}

// The package's declarations become `any` under nodenext resolution: what is used of them is stated here, once.
interface EpanetWorkspace {
  loadModule(): Promise<void>;
  writeFile(name: string, text: string): void;
  getError(code: number): string;
}
interface EpanetProject {
  open(input: string, report: string, output: string): void;
  close(): void;
  openH(): void;
  initH(flag: number): void;
  runH(): number;
  closeH(): void;
  getNodeValue(index: number, property: number): number;
  getLinkValue(index: number, property: number): number;
  getNodeValues(property: number): number[];
  getLinkValues(property: number): number[];
  setLinkValue(index: number, property: number, value: number): void;
  getStatistic(kind: number): number;
  _checkError(code: number): void;
}
const { Workspace, Project } = engine as unknown as {
  Workspace: new () => EpanetWorkspace;
  Project: new (workspace: EpanetWorkspace) => EpanetProject;
};

// Codes of the EPANET 2.3 toolkit (epanet2_enums.h, from memory; the numbers are the package's own enumerations).
const NODE_HEAD = 10;
const LINK_FLOW = 8;
const LINK_STATUS = 11;
const LINK_INITIAL_SETTING = 5;
const ITERATIONS = 0;
/** Of the warnings these two tell of the layout, not of the solution: a pump past its runout or shut out, a pressure below air. */
const HARMLESS_WARNINGS = [4, 6];
const FIRST_ERROR = 100;
const TRIALS = 1000;
/** initH flags: start every link from its own first guess, or from its last flow; both save the answer. */
const FRESH_FLOWS = 11;
const KEEP_FLOWS = 1;

/** EPANET's Hazen-Williams and minor-loss constants (its source: 4.727, 1.852, 4.871, 0.02517), ft and cfs. */
const HAZEN_WILLIAMS = { constant: 4.727, flowExponent: 1.852, diameterExponent: 4.871 };
const MINOR = 0.02517;
/** A pipe of this length (ft) and coefficient has a friction far below EPANET's own smallest gradient. */
const NO_FRICTION = { feet: 1e-6, coefficient: 1e6 };

/** EPANET could not solve what it was given. */
export class EpanetFailure extends Error {}

let loading: Promise<EpanetWorkspace> | undefined;

/** The engine, loaded once. */
export function loadEpanet(): Promise<EpanetWorkspace> {
  loading ??= (async () => {
    const workspace = new Workspace();
    await workspace.loadModule();
    return workspace;
  })();
  return loading;
}

/**
 * A network of ours in EPANET, in cubic feet a second and feet, where EPANET converts nothing, so that none of its rounded
 * conversions comes into the comparison. Its readings come back as doubles.
 */
export class EpanetModel {
  readonly #project: EpanetProject;
  readonly #nodeOrder: number[];
  readonly #linkOrder: number[];
  readonly #warnings: number[] = [];

  constructor(
    workspace: EpanetWorkspace,
    network: Network,
    hints: ReadonlyMap<number, EpanetHint>,
    options: EpanetOptions = {},
  ) {
    const { text, nodeOrder, linkOrder } = inputFile(network, hints, options);
    this.#nodeOrder = nodeOrder;
    this.#linkOrder = linkOrder;
    this.#project = new Project(workspace);
    // The package prints warnings to the console; a negative pressure is no fault here, all else is.
    this.#project._checkError = (code) => {
      if (code >= FIRST_ERROR) throw new EpanetFailure(`EPANET ${code}: ${workspace.getError(code)}`);
      if (code > 0) this.#warnings.push(code);
    };
    workspace.writeFile('network.inp', text);
    this.#project.open('network.inp', 'network.rpt', 'network.out');
    this.#project.openH();
  }

  setSpeed(link: number, speed: number): void {
    this.#project.setLinkValue(this.#linkOrder.indexOf(link) + 1, LINK_INITIAL_SETTING, speed);
  }

  /** Puts every flow back to the first guess, or keeps the last ones. */
  initialise(warm = false): void {
    this.#project.initH(warm ? KEEP_FLOWS : FRESH_FLOWS);
  }

  /** One steady solve from where `initialise` left off. */
  run(): void {
    this.#warnings.length = 0;
    this.#project.runH();
  }

  iterations(): number {
    return this.#project.getStatistic(ITERATIONS);
  }

  solve(): EpanetSolution {
    this.initialise();
    this.run();
    const amiss = this.#warnings.find((code) => !HARMLESS_WARNINGS.includes(code));
    if (amiss !== undefined) throw new EpanetFailure(`EPANET warning ${amiss}`);
    if (this.iterations() >= TRIALS)
      throw new EpanetFailure('EPANET still changes the state of a link at its last trial');
    return this.read();
  }

  /** Reads every head and flow by the toolkit's call for one value, as programs that use it do; gives their sum. */
  readOneByOne(): number {
    let sum = 0;
    for (let node = 1; node <= this.#nodeOrder.length; node += 1)
      sum += this.#project.getNodeValue(node, NODE_HEAD);
    for (let link = 1; link <= this.#linkOrder.length; link += 1)
      sum += this.#project.getLinkValue(link, LINK_FLOW);
    return sum;
  }

  /** Reads every head and flow at once; gives how many. */
  readAtOnce(): number {
    return this.#project.getNodeValues(NODE_HEAD).length + this.#project.getLinkValues(LINK_FLOW).length;
  }

  read(): EpanetSolution {
    const heads = new Float64Array(this.#nodeOrder.length);
    const flows = new Float64Array(this.#linkOrder.length);
    this.#project.getNodeValues(NODE_HEAD).forEach((head, index) => {
      heads[this.#nodeOrder[index]] = head * FOOT;
    });
    this.#project.getLinkValues(LINK_FLOW).forEach((flow, index) => {
      flows[this.#linkOrder[index]] = flow * CUBIC_FOOT;
    });
    const states = this.#project.getLinkValues(LINK_STATUS);
    const shut = this.#linkOrder.filter((_, index) => states[index] === 0);
    return { heads, flows, shut, iterations: this.iterations() };
  }

  close(): void {
    this.#project.closeH();
    this.#project.close();
  }
}

export async function solveByEpanet(
  network: Network,
  hints: ReadonlyMap<number, EpanetHint>,
  options: EpanetOptions = {},
): Promise<EpanetSolution> {
  const model = new EpanetModel(await loadEpanet(), network, hints, options);
  try {
    return model.solve();
  } finally {
    model.close();
  }
}

/** The input file, and which of our nodes and links stands at each of EPANET's indices. */
function inputFile(network: Network, hints: ReadonlyMap<number, EpanetHint>, options: EpanetOptions) {
  const junctions: number[] = [];
  const reservoirs: number[] = [];
  network.nodes.forEach((node, index) => {
    (node.head === undefined ? junctions : reservoirs).push(index);
  });
  const pipes: number[] = [];
  const pumps: number[] = [];
  network.links.forEach((link, index) => {
    (link.law.kind === 'curve' ? pumps : pipes).push(index);
  });
  const curves: string[] = [];
  const pumpLines = pumps.map((index) => {
    curves.push(...curveLines(network.links[index], index, hints.get(index)?.sampleFlows));
    return pumpLine(network.links[index], index);
  });
  const text = [
    '[JUNCTIONS]',
    ...junctions.map((index) => {
      const { elevation, demand } = network.nodes[index];
      return `N${index} ${elevation / FOOT} ${(demand ?? 0) / CUBIC_FOOT}`;
    }),
    '[RESERVOIRS]',
    ...reservoirs.map((index) => `N${index} ${(network.nodes[index].head ?? 0) / FOOT}`),
    '[PIPES]',
    ...pipes.map((index) => pipeLine(network.links[index], index, hints.get(index)?.bore)),
    '[PUMPS]',
    ...pumpLines,
    '[CURVES]',
    ...curves,
    '[OPTIONS]',
    'UNITS CFS',
    'HEADLOSS H-W',
    `TRIALS ${TRIALS}`,
    // The tightest that EPANET takes; the two limits below go on from there.
    'ACCURACY 1e-5',
    `HEADERROR ${(options.headTolerance ?? 3e-7) / FOOT}`,
    `FLOWCHANGE ${(options.flowTolerance ?? 1e-8) / CUBIC_FOOT}`,
    // The smallest gradient of a frictionless pipe, ft/cfs. EPANET's own 1e-7 lets rounding move a dead end's flow by 1e-7 cfs.
    'RQTOL 1e-5',
    // Within these a check valve counts as balanced and keeps its state. The first is EPANET's own; the second is a tenth of
    // it. Tighter, and rounding opens and shuts a valve at no flow until the trials run out.
    'HTOL 5e-4',
    'QTOL 1e-5',
    '[REPORT]',
    'STATUS NO',
    '[TIMES]',
    'DURATION 0',
    '[END]',
    '',
  ].join('\n');
  return { text, nodeOrder: [...junctions, ...reservoirs], linkOrder: [...pipes, ...pumps] };
}

function pipeLine(link: NetworkLink, index: number, bore = 1.5 * INCH): string {
  const { law } = link;
  if (law.kind === 'curve') throw new Error(`${link.name}: a pump is no pipe`);
  const diameter = bore / FOOT;
  const quadratic = law.kind === 'resistance' ? law.resistance : law.minor;
  const k = ((quadratic * CUBIC_FOOT ** 2) / FOOT / MINOR) * diameter ** 4;
  let { feet, coefficient } = NO_FRICTION;
  if (law.kind === 'power') {
    if (law.exponent !== HAZEN_WILLIAMS.flowExponent)
      throw new Error(`${link.name}: EPANET knows 1.852 only`);
    const friction = (law.resistance * CUBIC_FOOT ** law.exponent) / FOOT;
    coefficient = 100;
    feet =
      (friction * coefficient ** law.exponent * diameter ** HAZEN_WILLIAMS.diameterExponent) /
      HAZEN_WILLIAMS.constant;
  }
  const ends = `N${link.from} N${link.to}`;
  return `L${index} ${ends} ${feet} ${bore / INCH} ${coefficient} ${k} ${link.oneWay ? 'CV' : 'OPEN'}`;
}

function pumpLine(link: NetworkLink, index: number): string {
  if (link.law.kind !== 'curve' || link.law.speed === undefined)
    throw new Error(`${link.name}: EPANET takes pumps only`);
  return `L${index} N${link.from} N${link.to} HEAD C${index} SPEED ${link.law.speed}`;
}

function curveLines(link: NetworkLink, index: number, sampleFlows: number[] | undefined): string[] {
  const { law } = link;
  if (law.kind !== 'curve' || sampleFlows === undefined)
    throw new Error(`${link.name}: no flows to read its curve at`);
  const at = { loss: 0, slope: 0 };
  return sampleFlows.map((flow) => {
    law.curve.evaluate(flow, at);
    return `C${index} ${flow / CUBIC_FOOT} ${-at.loss / FOOT}`;
  });
}
