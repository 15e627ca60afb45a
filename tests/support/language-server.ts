import { type ChildProcess, spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const SERVER = fileURLToPath(
  new URL('../../node_modules/yaml-language-server/bin/yaml-language-server', import.meta.url),
);

export interface Diagnostic {
  message: string;
  range: { start: { line: number; character: number } };
}

interface Message {
  id?: number;
  method?: string;
  params?: unknown;
  result?: unknown;
  error?: { message: string };
}

/** A YAML language server as an editor runs it, spoken to in the Language Server Protocol. */
export class LanguageServer {
  private readonly child: ChildProcess;
  private readonly waiting = new Map<number, (message: Message) => void>();
  private readonly diagnosed = new Map<string, (diagnostics: Diagnostic[]) => void>();
  private rest = Buffer.alloc(0);
  private last = 0;

  constructor() {
    this.child = spawn(process.execPath, [SERVER, '--stdio'], { stdio: ['pipe', 'pipe', 'ignore'] });
    this.child.stdout?.on('data', (chunk: Buffer) => this.take(chunk));
  }

  async start(): Promise<void> {
    await this.request('initialize', {
      processId: process.pid,
      rootUri: null,
      capabilities: {
        textDocument: {
          hover: { contentFormat: ['plaintext'] },
          completion: { completionItem: { snippetSupport: false } },
        },
      },
    });
    this.send({ method: 'initialized', params: {} });
    const yaml = { validate: true, hover: true, completion: true, schemaStore: { enable: false } };
    this.send({ method: 'workspace/didChangeConfiguration', params: { settings: { yaml } } });
  }

  /** What the server finds wrong with a text that stands at an address. */
  open(uri: string, text: string): Promise<Diagnostic[]> {
    const found = new Promise<Diagnostic[]>((resolve) => this.diagnosed.set(uri, resolve));
    this.send({
      method: 'textDocument/didOpen',
      params: { textDocument: { uri, languageId: 'yaml', version: 1, text } },
    });
    return found;
  }

  async hover(uri: string, line: number, character: number): Promise<string> {
    const place = { textDocument: { uri }, position: { line, character } };
    const found = (await this.request('textDocument/hover', place)) as { contents: unknown } | null;
    return JSON.stringify(found?.contents ?? '');
  }

  async complete(uri: string, line: number, character: number): Promise<string[]> {
    const place = { textDocument: { uri }, position: { line, character } };
    const found = (await this.request('textDocument/completion', place)) as { items: { label: string }[] };
    return found.items.map(({ label }) => label);
  }

  stop(): void {
    this.child.kill();
  }

  private request(method: string, params: unknown): Promise<unknown> {
    const id = ++this.last;
    return new Promise((resolve, reject) => {
      this.waiting.set(id, ({ result, error }) =>
        error ? reject(new Error(error.message)) : resolve(result),
      );
      this.send({ id, method, params });
    });
  }

  private send(message: Message): void {
    const body = JSON.stringify({ jsonrpc: '2.0', ...message });
    this.child.stdin?.write(`Content-Length: ${Buffer.byteLength(body)}\r\n\r\n${body}`);
  }

  private take(chunk: Buffer): void {
    this.rest = Buffer.concat([this.rest, chunk]);
    for (;;) {
      const head = this.rest.indexOf('\r\n\r\n');
      const length = Number(/Content-Length: (\d+)/.exec(this.rest.toString('latin1', 0, head))?.[1]);
      if (head < 0 || this.rest.length < head + 4 + length) return;
      const body = this.rest.toString('utf8', head + 4, head + 4 + length);
      this.rest = this.rest.subarray(head + 4 + length);
      this.answer(JSON.parse(body));
    }
  }

  private answer(message: Message): void {
    const { id, method, params } = message;
    if (method === 'textDocument/publishDiagnostics') {
      const { uri, diagnostics } = params as { uri: string; diagnostics: Diagnostic[] };
      this.diagnosed.get(uri)?.(diagnostics);
    } else if (method !== undefined && id !== undefined) {
      this.send({ id, result: method === 'workspace/configuration' ? [{}, {}, {}, {}, {}] : null });
    } else if (id !== undefined) this.waiting.get(id)?.(message);
  }
}
