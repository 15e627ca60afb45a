import * as engine from 'epanet-js';
import { EpanetFailure, loadEpanet } from './epanet.js';

// As in epanet.ts: the package's declarations become `any` under nodenext resolution.
interface Project {
  open(input: string, report: string, output: string): void;
  close(): void;
  solveH(): void;
  getNodeIndex(id: string): number;
  getLinkIndex(id: string): number;
  getNodeValue(index: number, property: number): number;
  getLinkValue(index: number, property: number): number;
  _checkError(code: number): void;
}
const { Project } = engine as unknown as { Project: new (workspace: unknown) => Project };

const NODE_HEAD = 10;
const LINK_FLOW = 8;
const FIRST_ERROR = 100;

/** Solves an input file as it is written, in the file's own units; for what our own networks have no words for. */
export async function solveInput(text: string, nodes: string[], links: string[]) {
  const workspace = await loadEpanet();
  const project = new Project(workspace);
  project._checkError = (code) => {
    if (code >= FIRST_ERROR) throw new EpanetFailure(`EPANET ${code}: ${workspace.getError(code)}`);
  };
  workspace.writeFile('input.inp', text);
  try {
    project.open('input.inp', 'input.rpt', 'input.out');
    project.solveH();
    return {
      heads: nodes.map((id) => project.getNodeValue(project.getNodeIndex(id), NODE_HEAD)),
      flows: links.map((id) => project.getLinkValue(project.getLinkIndex(id), LINK_FLOW)),
    };
  } finally {
    project.close();
  }
}
