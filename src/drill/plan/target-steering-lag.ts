import { scoreRep } from '../../score/score-rep.ts';
import type { Curve, Target } from '../../target/target.ts';
import type { RepRecord } from '../../trace/rep-record.ts';
import type { Track } from '../../trace/track.ts';

const RATE_HZ = 1000;
const BEFORE_S = 0.5;
const AFTER_S = 1;

/**
 * How much later the wheel is half in than the brake is half off, on the target itself, by the estimator that measures
 * reps: whoever follows the target to the letter has this lag. Null for a target without steering.
 *
 * @param target over time
 */
export function targetSteeringLag(target: Target): number | null {
  if (target.steering === null) return null;
  return scoreRep(recordOf(target, target.steering), target).side?.steeringLagS ?? null;
}

function recordOf({ level, marks }: Target, steering: Curve): RepRecord {
  const endS = Math.max(marks.brakeOff, steering.end) + AFTER_S;
  const count = Math.ceil((BEFORE_S + endS) * RATE_HZ);
  const timeS = Float64Array.from({ length: count }, (_, i) => i / RATE_HZ - BEFORE_S);
  const track = (curve: Curve): Track => ({ timeS, value: timeS.map((t) => curve.at(t)) });
  return {
    brake: track(level),
    throttle: null,
    clutch: null,
    steering: track(steering),
    buttons: [],
    gaps: [],
    brakeStepLevel: 0,
    endS,
  };
}
