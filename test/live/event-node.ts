import { type ChildProcessByStdio, spawn } from 'node:child_process';
import { once } from 'node:events';
import { readdirSync } from 'node:fs';
import { basename } from 'node:path';
import type { Readable } from 'node:stream';
import { setTimeout as delay } from 'node:timers/promises';
import { hasOpen } from './has-open.ts';

/** linux/input.h: struct input_event on 64-bit machines, and the types of event that matter here. */
const EVENT_BYTES = 24;
const EV_SYN = 0;
const EV_ABS = 3;
const SYN_DROPPED = 3;

/** What the kernel's own input layer makes of a device: its decoding is independent of this program's. */
export class EventNode {
  readonly #child: ChildProcessByStdio<null, Readable, null>;
  readonly #chunks: Buffer[] = [];

  private constructor(path: string) {
    this.#child = spawn('cat', [path], { stdio: ['ignore', 'pipe', 'inherit'] });
    this.#child.stdout.on('data', (chunk: Buffer) => this.#chunks.push(chunk));
  }

  /** Listens to the event node that belongs to a hidraw node. */
  static async beside(hidrawPath: string): Promise<EventNode> {
    const device = `/sys/class/hidraw/${basename(hidrawPath)}/device/input`;
    const input = readdirSync(device).find((name) => name.startsWith('input'))!;
    const event = readdirSync(`${device}/${input}`).find((name) => name.startsWith('event'))!;
    const node = new EventNode(`/dev/input/${event}`);
    await once(node.#child, 'spawn');
    // The kernel keeps nothing for whoever opens it later, and a slow guest takes its time to get there.
    while (!hasOpen(node.#child.pid!, `/dev/input/${event}`)) await delay(50);
    return node;
  }

  /** The values of one axis so far, in order; the kernel leaves out what did not change. */
  values(absCode: number): number[] {
    const bytes = Buffer.concat(this.#chunks);
    const values: number[] = [];
    for (let at = 0; at + EVENT_BYTES <= bytes.length; at += EVENT_BYTES) {
      const [type, code] = [bytes.readUInt16LE(at + 16), bytes.readUInt16LE(at + 18)];
      if (type === EV_SYN && code === SYN_DROPPED) throw new Error('the kernel dropped events');
      if (type === EV_ABS && code === absCode) values.push(bytes.readInt32LE(at + 20));
    }
    return values;
  }

  async close(): Promise<void> {
    this.#child.kill();
    if (this.#child.exitCode === null) await once(this.#child, 'exit');
  }
}
