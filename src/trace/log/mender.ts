import type { ProfileProblem } from '../../profile/profile-problem.ts';
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

/**
 * A start-up value that no brake can have is to be passed over until the first that it can.
 * @returns 'take', 'pass', or the problem of such values later in the log
 */
export class StartGate {
  #open: boolean = false;
  #strange: number = 0;
  readonly #scale: BrakeScale;
  readonly #notices: Notices;

  constructor(scale: BrakeScale, notices: Notices) {
    this.#scale = scale;
    this.#notices = notices;
  }

  judge(value: number, line: number): 'take' | 'pass' | ProfileProblem {
    if (Math.abs(value) <= this.#scale.largest) {
      this.#open = true;
      this.#strange = 0;
      return 'take';
    }
    if (Number.isNaN(value)) return 'pass';
    if (!this.#open) {
      this.#notices.add('start-up value of the brake: the row is passed over', line);
      return 'pass';
    }
    this.#strange++;
    if (this.#strange === 1) return 'take';
    const what = `the brake stays at ${value}, more than any brake has`;
    return { line, column: 1, what, next: 'Check the unit (--unit) and the sensor.' };
  }
}

/** The middle of three samples, mended where it stands alone: a spike becomes the mean of its neighbours. */
export function isSpike(
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
