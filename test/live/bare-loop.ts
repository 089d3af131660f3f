import { type ChildProcessByStdio, spawn } from 'node:child_process';
import { once } from 'node:events';
import type { Readable, Writable } from 'node:stream';
import type { ReportLayout } from './virtual-rig.ts';

export interface BareResult {
  readonly results: readonly {
    readonly received: number;
    readonly last: number;
    readonly lost: number;
    readonly latenessUs: readonly number[];
  }[];
  readonly cpuUs: number;
}

/** A process that only reads devices, see bare-loop.mjs. */
export class BareLoop {
  readonly #child: ChildProcessByStdio<Writable, Readable, null>;
  #output = '';

  private constructor(devices: readonly object[]) {
    const file = new URL('./bare-loop.mjs', import.meta.url).pathname;
    const args = [file, JSON.stringify(devices)];
    this.#child = spawn(process.execPath, args, { stdio: ['pipe', 'pipe', 'inherit'] });
    this.#child.stdout.on('data', (chunk: Buffer) => {
      this.#output += chunk.toString();
    });
  }

  static async start(
    devices: readonly (Pick<ReportLayout, 'counter' | 'sentUsAt'> & { readonly path: string })[],
  ): Promise<BareLoop> {
    const loop = new BareLoop(devices);
    await once(loop.#child.stdout, 'data');
    return loop;
  }

  async finish(): Promise<BareResult> {
    this.#child.stdin.end();
    await once(this.#child, 'close');
    return JSON.parse(this.#output.slice(this.#output.indexOf('\n') + 1)) as BareResult;
  }
}
