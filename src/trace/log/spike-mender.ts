import type { Notices } from './notices.ts';

/** What a brake signal can be, in its kept unit (level, Pa or N). */
export interface BrakeScale {
  /** Beyond this no brake and no leg goes: a sentinel or a fault. */
  readonly largest: number;
  /** A single sample this far from both neighbours is a spike. */
  readonly spike: number;
}

/** At slower logs one sample may well be a stab at the pedal. */
const LONGEST_SPIKE_S = 0.05;
/** Share of the jump by which the neighbours of a spike may differ. */
const NEIGHBOURS = 0.25;

/** Holds each row back until its right neighbour is known: a single sample of the brake that stands alone is mended. */
export class SpikeMender {
  readonly #brake: number;
  readonly #scale: BrakeScale;
  readonly #notices: Notices;
  readonly #onRow: (values: Float64Array, timeS: number, line: number) => void;
  /** The row that waits; no line where there is none. */
  readonly #waiting: Float64Array;
  #waitingS: number = 0;
  #waitingLine: number | null = null;
  /** Brake of the row before that one, NaN where there is none, and its time. */
  #before: number = Number.NaN;
  #beforeS: number = 0;

  /**
   * @param brake where a row has its brake
   * @param width values of a row
   * @param onRow takes each row in its turn, mended; the values are only good until it returns
   */
  constructor(
    brake: number,
    width: number,
    scale: BrakeScale,
    notices: Notices,
    onRow: (values: Float64Array, timeS: number, line: number) => void,
  ) {
    this.#brake = brake;
    this.#scale = scale;
    this.#notices = notices;
    this.#onRow = onRow;
    this.#waiting = new Float64Array(width);
  }

  /** When the row was logged that waits, or that was handed on last; null where there was none. */
  get lastS(): number | null {
    return this.#waitingLine === null ? null : this.#waitingS;
  }

  /** Hands on the row that waits, mended where this one shows it to be a spike. */
  release(values: Float64Array, timeS: number): void {
    const after = values[this.#brake]!;
    const middle = this.#waiting[this.#brake]!;
    const spanS = timeS - this.#beforeS;
    if (this.#waitingLine !== null && isSpike(this.#before, middle, after, spanS, this.#scale)) {
      this.#waiting[this.#brake] = (this.#before + after) / 2;
      this.#notices.add(
        'a single sample of the brake stood far off: the mean of its neighbours is taken',
        this.#waitingLine,
      );
    }
    this.end();
  }

  /** Hands on the row that waits as it is. */
  end(): void {
    if (this.#waitingLine === null) return;
    this.#onRow(this.#waiting, this.#waitingS, this.#waitingLine);
    this.#before = this.#waiting[this.#brake]!;
    this.#beforeS = this.#waitingS;
  }

  /** Keeps a copy of a row, after what waited was released. */
  hold(values: Float64Array, timeS: number, line: number): void {
    this.#waiting.set(values);
    this.#waitingS = timeS;
    this.#waitingLine = line;
  }

  /** The next rows have nothing to do with those before. */
  restart(): void {
    this.#before = Number.NaN;
  }
}

/** A spike jumps off its neighbours, both ways, while these agree. */
function isSpike(
  before: number,
  middle: number,
  after: number,
  spanS: number,
  { spike, largest }: BrakeScale,
): boolean {
  const up = middle - before;
  const down = middle - after;
  const jump = Math.min(Math.abs(up), Math.abs(down));
  if (up * down <= 0 || Math.abs(after - before) > NEIGHBOURS * jump) return false;
  return jump > spike && (spanS <= LONGEST_SPIKE_S || Math.abs(middle) > largest);
}
