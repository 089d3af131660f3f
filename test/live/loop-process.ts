import { type ChildProcessByStdio, spawn } from 'node:child_process';
import { once } from 'node:events';
import type { Readable, Writable } from 'node:stream';
import type { ReportLayout } from './virtual-rig.ts';

/** What a process that only reads devices has seen. */
export interface LoopResult {
  readonly results: readonly {
    readonly received: number;
    readonly lost: number;
    /** Sending to stamping, per report. */
    readonly latenessUs: readonly number[];
  }[];
  /** Processor time of all its threads while it read. */
  readonly cpuUs: number;
}

/** A device to read, and where its reports say when they were sent. */
export type LoopDevice = Pick<ReportLayout, 'counter' | 'sentUsAt'> & { readonly path: string };

/** Work on the main thread beside reading, as a screen causes it. */
export interface Frames {
  readonly everyMs: number;
  readonly blockMs: number;
}

/** The least program that reads devices with the HID library: what a reader is compared with. */
export const BARE_LOOP: URL = new URL('./bare-loop.mjs', import.meta.url);

/** A process that reads devices until it is told to stop. */
export class LoopProcess {
  readonly #child: ChildProcessByStdio<Writable, Readable, null>;
  #output = '';

  private constructor(
    program: URL,
    devices: readonly LoopDevice[],
    frames: Frames | null,
    env: NodeJS.ProcessEnv,
  ) {
    const args = [program.pathname, JSON.stringify(devices), JSON.stringify(frames)];
    const stdio: ['pipe', 'pipe', 'inherit'] = ['pipe', 'pipe', 'inherit'];
    this.#child = spawn(process.execPath, args, { stdio, env: { ...process.env, ...env } });
    this.#child.stdout.on('data', (chunk: Buffer) => {
      this.#output += chunk.toString();
    });
  }

  /** @param env variables beside those of this process */
  static async start(
    program: URL,
    devices: readonly LoopDevice[],
    frames: Frames | null = null,
    env: NodeJS.ProcessEnv = {},
  ): Promise<LoopProcess> {
    const loop = new LoopProcess(program, devices, frames, env);
    await once(loop.#child.stdout, 'data');
    return loop;
  }

  get pid(): number {
    return this.#child.pid!;
  }

  async finish(): Promise<LoopResult> {
    this.#child.stdin.end();
    await once(this.#child, 'close');
    return JSON.parse(this.#output.slice(this.#output.indexOf('\n') + 1)) as LoopResult;
  }
}
