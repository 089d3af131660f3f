import type { FollowedTarget } from '../live/followed-target.ts';
import type { LiveRun } from '../live/live-run.ts';
import { stepAtPlace } from '../live/run-steps.ts';
import type { LiveMeasures } from './live-measures.ts';

/** Share of the rail's largest angle at which the wheel counts as turned in. */
const TURNED = 0.25;

type SteeringMeasures = Pick<LiveMeasures, 'turnInErrorM' | 'steeringRatio'>;

const NONE: SteeringMeasures = { turnInErrorM: null, steeringRatio: null };

/**
 * The wheel against the rail at the car's own speed: where either first passes a quarter of the rail's largest angle
 * on the way to the slowest point, and the own angle over the rail's from there on, as a ratio of means.
 */
export function steeringMeasures(run: LiveRun, followed: FollowedTarget): SteeringMeasures {
  const { columns, zone } = run;
  if (!zone.controls.steering) return NONE;
  const end = (stepAtPlace(run, zone.derived.zone.slowestM) ?? columns.placeM.length - 1) + 1;
  const rail = followed.steeringRad.subarray(0, end);
  const own = columns.steeringRad.subarray(0, end);
  const largest = rail.reduce((a, b) => (Math.abs(b) > Math.abs(a) ? b : a), 0);
  const isTurned = (angle: number): boolean =>
    angle * Math.sign(largest) >= TURNED * Math.abs(largest);
  const railStep = rail.findIndex(isTurned);
  if (largest === 0 || railStep === -1) return NONE;
  const ownStep = own.findIndex(isTurned);
  const mean = (angles: Float64Array): number =>
    angles.subarray(railStep).reduce((sum, angle) => sum + angle, 0);
  return {
    turnInErrorM: ownStep === -1 ? null : columns.placeM[ownStep]! - columns.placeM[railStep]!,
    steeringRatio: mean(own) / mean(rail),
  };
}
