import type { BrakingIdea } from './braking-idea.ts';
import type { BrakingPlan } from './braking-plan.ts';
import type { Wish } from './controls.ts';

/** The throttle is lifted a little before the brake is touched. Common practice, no source. */
const LIFT_BEFORE_S = 0.15;
const PADDLE_S = 0.08;

/** All that a driver does in one rep. */
export interface RepMotion {
  /** On the source's clock. */
  readonly pressS: number;
  readonly idea: BrakingIdea;
  readonly plan: BrakingPlan;
  /** When the left paddle is pulled, on the source's clock. */
  readonly shiftsS: readonly number[];
}

/**
 * Where feet and hands should be at a moment of the rep.
 *
 * @param noise share by which the force differs from the one that is meant
 */
export function wishAt(
  { pressS, idea, plan, shiftsS }: RepMotion,
  timeS: number,
  noise: number,
): Wish {
  const sinceS = timeS - pressS;
  const meant = sinceS > 0 && sinceS < plan.endS ? plan.levelAt(sinceS) : 0;
  return {
    brake: Math.min(1, Math.max(0, meant * (1 + noise))),
    throttle: sinceS < -LIFT_BEFORE_S ? 1 : 0,
    clutch: 0,
    steeringDeg: idea.steeringDegAt(sinceS),
    leftPaddle: shiftsS.some((shiftS) => timeS >= shiftS && timeS < shiftS + PADDLE_S),
    nextButton: false,
  };
}
