import { ROLE } from './log-roles.ts';

/** Enough steering, and enough turning, for their signs to mean something. */
const LEAST_STEERING_DEG = 10;
const LEAST_LATERAL_MPS2 = 3;
const LEAST_YAW_RADPS = 0.15;
const FEWEST_ROWS = 50;
const CLEAR = 0.9;

/**
 * Which way steering is positive, judged by the turning of the car: lateral acceleration where the log has it, else
 * yaw rate; both are positive to the left in ISO 8855, which is assumed of them.
 */
export class SteeringCheck {
  #same: number = 0;
  #all: number = 0;

  push(values: Float64Array): void {
    const steering = values[ROLE.steering]!;
    const turning = turn(values);
    if (!(Math.abs(steering) > LEAST_STEERING_DEG) || turning === 0) return;
    this.#all++;
    if (steering > 0 === turning > 0) this.#same++;
  }

  /** `null` where the log cannot tell. */
  get positive(): 'left' | 'right' | null {
    if (this.#all < FEWEST_ROWS) return null;
    const share = this.#same / this.#all;
    if (share >= CLEAR) return 'left';
    return share <= 1 - CLEAR ? 'right' : null;
  }
}

function turn(values: Float64Array): number {
  const lateral = values[ROLE['lateral-acceleration']]!;
  if (Math.abs(lateral) > LEAST_LATERAL_MPS2) return lateral;
  const yaw = values[ROLE['yaw-rate']]!;
  return Number.isNaN(lateral) && Math.abs(yaw) > LEAST_YAW_RADPS ? yaw : 0;
}
