import { type ChildProcessWithoutNullStreams, spawn } from 'node:child_process';
import { once } from 'node:events';
import { createInterface } from 'node:readline';
import type { VirtualDevice } from './virtual-rig.ts';

export interface StreamPlan {
  readonly rateHz: number;
  /** Number of the first report. */
  readonly first: number;
  readonly count: number;
  /** Reports that may be sent at once to catch up. */
  readonly burst?: number;
}

export interface Sending {
  /** Resolves at the end, with the time at which each point of the first line was first sent, in microseconds. */
  readonly finished: Promise<readonly number[]>;
}

/** Values of one field over time, as points to be joined by lines: seconds from now, count. */
export type Line = readonly (readonly [number, number])[];

export interface PlayPlan {
  readonly rateHz: number;
  /** One for each field of the device's layout. */
  readonly points: readonly Line[];
  /** When the device is taken out, if it is. */
  readonly unplugS?: number;
}

type Answer =
  | { readonly done: number; readonly error?: string }
  | { readonly finished: string; readonly sentUs: readonly number[] };

/** Plays devices to the kernel. */
const UHID_DEVICES = new URL('./uhid-devices.mjs', import.meta.url);

/** The process that plays virtual devices. */
export class DeviceProcess {
  readonly #child: ChildProcessWithoutNullStreams;
  readonly #answers: Map<number, (error: string | undefined) => void> = new Map();
  readonly #finished: Map<string, (sentUs: readonly number[]) => void> = new Map();
  #number = 0;

  /** @param args for the program: where its devices are, if it is not the kernel that has them */
  constructor(program: URL = UHID_DEVICES, args: readonly string[] = []) {
    this.#child = spawn(process.execPath, [program.pathname, ...args]);
    this.#child.stderr.pipe(process.stderr);
    createInterface({ input: this.#child.stdout }).on('line', (line) => this.#hear(line));
  }

  async create({ id, name, serial, vendor, product, descriptor }: VirtualDevice): Promise<void> {
    const bytes = Buffer.from(name).toString('hex');
    await this.#order('create', { id, name: bytes, serial, vendor, product, descriptor });
  }

  async destroy({ id }: VirtualDevice): Promise<void> {
    await this.#order('destroy', { id });
  }

  /** Starts sending; the promise in the answer resolves when the last report has been sent. */
  stream({ id, layout }: VirtualDevice, plan: StreamPlan): Promise<Sending> {
    return this.#send('stream', { id, layout, ...plan });
  }

  /** Starts to follow lines; the promise in the answer resolves at their end, where the last values are held. */
  play({ id, layout }: VirtualDevice, plan: PlayPlan): Promise<Sending> {
    return this.#send('play', { id, layout, ...plan });
  }

  async close(): Promise<void> {
    this.#child.stdin.end();
    this.#child.kill();
    if (this.#child.exitCode === null) await once(this.#child, 'exit');
  }

  async #send(order: string, rest: Pick<VirtualDevice, 'id' | 'layout'>): Promise<Sending> {
    const finished = new Promise<readonly number[]>((resolve) =>
      this.#finished.set(rest.id, resolve),
    );
    await this.#order(order, rest);
    return { finished };
  }

  #order(order: string, rest: object): Promise<void> {
    this.#number += 1;
    const number = this.#number;
    return new Promise((resolve, reject) => {
      this.#answers.set(number, (error) => (error === undefined ? resolve() : reject(error)));
      this.#child.stdin.write(`${JSON.stringify({ order, number, ...rest })}\n`);
    });
  }

  #hear(line: string): void {
    const message = JSON.parse(line) as Answer;
    if ('done' in message) this.#answers.get(message.done)?.(message.error);
    else this.#finished.get(message.finished)?.(message.sentUs);
  }
}
