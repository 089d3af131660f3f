import type { FollowedTarget } from '../live/followed-target.ts';
import { STEP_S } from '../live/live-car.ts';
import type { LiveRun } from '../live/live-run.ts';
import { stepOf } from '../live/run-steps.ts';
import { DEFAULT_CORRIDOR } from '../target/target-spec.ts';
import type { GripEvent } from './live-measures.ts';
import { NOTICE_S } from './live-score-version.ts';

/**
 * The lock-ups that the foot brought about: on the straight, or with more than the followed target's corridor in the
 * corner. A car that is too fast for its rail slides there with any foot; that is the fault of what came before.
 */
export function footLockUps(
  run: LiveRun,
  followed: FollowedTarget,
  lockUps: readonly GripEvent[],
): GripEvent[] {
  return lockUps.filter(
    ({ fromM, fromS }) => fromM < 0 || isAbove(run, followed, stepOf(run, fromS)),
  );
}

/** True where the foot gives more than the followed target's corridor. */
export function isAbove(run: LiveRun, followed: FollowedTarget, step: number): boolean {
  const { floorLevel, share } = DEFAULT_CORRIDOR;
  const target = followed.level[step]!;
  return run.columns.level[step]! > target + Math.max(floorLevel, share * target);
}

/**
 * Time with locked wheels in which the foot stayed on although it had had time to notice, s: wheels turn again only
 * below what a sliding tyre takes.
 *
 * @param lockUps those that the foot brought about
 */
export function heldLockedS(
  run: LiveRun,
  followed: FollowedTarget,
  lockUps: readonly GripEvent[],
): number {
  const { level, timeS } = run.columns;
  const held = new Set<number>();
  for (const { axle, fromS, toS } of lockUps) {
    const { slidingShare } = run.zone.car.wheels[axle];
    const end = toS === null ? timeS.length : stepOf(run, toS);
    for (let i = stepOf(run, fromS + NOTICE_S); i < end; i++)
      if (level[i]! > slidingShare * followed.level[i]!) held.add(i);
  }
  return held.size * STEP_S;
}
