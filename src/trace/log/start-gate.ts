import type { ProfileProblem } from '../../profile/profile-problem.ts';
import type { Notices } from './notices.ts';
import type { BrakeScale } from './spike-mender.ts';

/**
 * A start-up value that no brake can have is to be passed over until the first that it can.
 * @returns 'take', 'pass', or the problem of such values later in the log
 */
export class StartGate {
  #open: boolean = false;
  #strange: number = 0;
  readonly #scale: Pick<BrakeScale, 'largest'>;
  readonly #notices: Notices;

  constructor(scale: Pick<BrakeScale, 'largest'>, notices: Notices) {
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
