/** Where a long job says how far it is. */
export interface ProgressOutput {
  /** Writes to stderr. */
  write(text: string): void;
  /** Lines can be drawn again in place. */
  readonly isTerminal: boolean;
  readonly columns: number;
  /** Milliseconds of any clock that only goes on. */
  nowMs(): number;
}

/** The program's own stderr and clock. */
export const STDERR_PROGRESS: ProgressOutput = {
  write: (text) => void process.stderr.write(text),
  isTerminal: process.stderr.isTTY === true,
  columns: process.stderr.columns ?? 80,
  nowMs: () => performance.now(),
};

const CLEAR = '\r\u001b[K';
/** Faster than anyone reads, slow enough to cost nothing. */
const REDRAW_MS = 100;

/** One line on a terminal with count, rate and time left; nothing at all elsewhere. */
export class ProgressLine {
  readonly #output: ProgressOutput;
  readonly #noun: string;
  readonly #total: number;
  readonly #startMs: number;
  #drawnMs = Number.NEGATIVE_INFINITY;

  constructor(output: ProgressOutput, noun: string, total: number) {
    this.#output = output;
    this.#noun = noun;
    this.#total = total;
    this.#startMs = output.nowMs();
  }

  /** So many are done. */
  show(done: number): void {
    const { isTerminal, columns } = this.#output;
    const nowMs = this.#output.nowMs();
    if (!isTerminal || nowMs - this.#drawnMs < REDRAW_MS) return;
    this.#drawnMs = nowMs;
    const line = progressText(done, this.#total, (nowMs - this.#startMs) / 1000, this.#noun);
    this.#output.write(CLEAR + line.slice(0, columns - 1));
  }

  /** Takes the line away. */
  end(): void {
    if (this.#output.isTerminal) this.#output.write(CLEAR);
  }
}

/** For example `120 of 1000 reps, 40 per s, 22 s left`. */
export function progressText(done: number, total: number, elapsedS: number, noun: string): string {
  const counted = `${done} of ${total} ${noun}`;
  if (done === 0 || elapsedS <= 0) return counted;
  const perS = done / elapsedS;
  const left = `${Math.ceil((total - done) / perS)} s left`;
  return `${counted}, ${perS < 10 ? perS.toFixed(1) : Math.round(perS)} per s, ${left}`;
}
