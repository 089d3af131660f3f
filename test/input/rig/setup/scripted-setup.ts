import { NEVER, Subject } from 'rxjs';
import type { ReportBatch } from '../../../../src/input/report-batch.ts';
import type { ReportSource } from '../../../../src/input/report-source.ts';
import type { SetupTerminal } from '../../../../src/input/rig/setup/setup-terminal.ts';
import type { RigDevice } from '../../../../src/input/rig-device.ts';
import { Problem } from '../../../../src/problem.ts';
import { batchOf, type Report } from '../../report-batches.ts';

/** What the driver does at a question: reports that come, then an answer. */
export interface Step {
  readonly question: RegExp;
  readonly answer?: string;
  /** Bytes of the reports that come before the answer, a millisecond apart, each with its device. */
  readonly reports?: readonly (readonly [device: number, bytes: readonly number[]])[];
}

/** A driver who follows a script, and a source that moves with it. */
export class ScriptedSetup implements SetupTerminal {
  readonly source: ReportSource;
  readonly said: string[] = [];
  readonly live: string[] = [];
  /** Whether each question that needs no answer was over by what had come. */
  readonly overs: boolean[] = [];
  closed = 0;
  readonly #batches$: Subject<ReportBatch> = new Subject();
  readonly #steps: Step[];
  #nowUs = 0;

  constructor(devices: readonly RigDevice[], steps: readonly Step[]) {
    this.#steps = [...steps];
    this.source = {
      label: 'script',
      devices,
      batches$: this.#batches$,
      events$: NEVER,
      simulated: true,
      see: () => undefined,
      close: async () => {
        this.closed += 1;
      },
    };
  }

  /** Steps nobody asked for. */
  get left(): readonly Step[] {
    return this.#steps;
  }

  get text(): string {
    return this.said.join('\n');
  }

  say(text: string): void {
    this.said.push(text);
  }

  async ask(question: string): Promise<string> {
    this.said.push(question);
    const step = this.#steps.shift();
    if (step === undefined) throw new Problem('the script is over', { where: 'answers', next: '' });
    if (!step.question.test(question))
      throw new Error(`expected ${step.question}, was asked ${question}`);
    this.#play(step.reports ?? []);
    return step.answer ?? '';
  }

  async askLive(question: string, live: () => string): Promise<string> {
    const answer = await this.ask(question);
    this.live.push(live());
    return answer;
  }

  /** Looks once, when the reports are there; a step without an answer waits until it is over. */
  async askUntil(question: string, isOver: () => boolean): Promise<string | null> {
    const isSilent = this.#steps[0]?.answer === undefined;
    const answer = await this.ask(question);
    this.overs.push(isOver());
    return isSilent ? null : answer;
  }

  fail(error: Error): void {
    this.#batches$.error(error);
  }

  #play(given: readonly (readonly [number, readonly number[]])[]): void {
    for (let i = 0; i < given.length; i += 8) {
      const reports = given.slice(i, i + 8).map(([device, bytes], j): Report => {
        return [device, this.#nowUs + 1000 * j, bytes];
      });
      this.#nowUs += 8000;
      this.#batches$.next(batchOf(this.#nowUs - 1, reports));
    }
  }
}

/** Three presses of 400 ms with 100 ms held at `full`, and rest between: counts a millisecond apart. */
export function presses(rest: number, full: number): number[] {
  const way = (share: number): number => Math.round(rest + share * (full - rest));
  const one = [
    ...Array.from({ length: 150 }, (_, i) => way(i / 150)),
    ...Array.from({ length: 100 }, () => full),
    ...Array.from({ length: 150 }, (_, i) => way(1 - i / 150)),
    ...Array.from({ length: 50 }, () => rest),
  ];
  return [...one, ...one, ...one];
}
