import type { FollowedTarget } from '../live/followed-target.ts';
import { STEP_S } from '../live/live-car.ts';
import type { LiveRun } from '../live/live-run.ts';
import { stepAtPlace, stepOf } from '../live/run-steps.ts';
import { footLockUps, heldLockedS, isAbove } from './held-lock-ups.ts';
import { lengthenedM } from './lengthened.ts';
import type { GripEvent, LiveMeasures } from './live-measures.ts';
import { missedDownshifts, scoredShifts } from './scored-shifts.ts';
import { steeringMeasures } from './steering-measures.ts';
import { type Stretch, stretchesOf } from './stretches.ts';

/** Starts of release of rep and followed target by the one estimator, seconds from the cue. */
interface ReleaseStarts {
  readonly ownS: number | null;
  readonly followedS: number | null;
}

/** What the live car adds to the measures of a rep. */
export function measureLive(
  run: LiveRun,
  followed: FollowedTarget,
  release: ReleaseStarts,
): LiveMeasures {
  const { columns, zone } = run;
  const { keys } = zone.derived;
  const lockUps = gripEvents(run, 'lock-up');
  const antiLock = gripEvents(run, 'anti-lock');
  const endS = columns.timeS[columns.timeS.length - 1]!;
  const locked = stretchesOf(lockUps, endS);
  const slowestSpeedMps = columns.speedMps
    .subarray(0, slowestStep(run) + 1)
    .reduce((a, b) => Math.min(a, b));
  return {
    ...brakePoint(run, followed),
    slowestSpeedMps,
    slowestSpeedErrorMps: slowestSpeedMps - keys.slowest.speedMps,
    startOfReleaseErrorM: releaseError(run, release),
    releaseSpeedErrorMps: speedAt(run, keys.startOfRelease.sM) - keys.startOfRelease.speedMps,
    ...apex(run, followed),
    gripUse: gripUse(run, followed),
    lockUps,
    antiLock,
    lockedS: heldLockedS(run, followed, footLockUps(run, followed, lockUps)),
    antiLockTurnedS: turnedS(run, followed, stretchesOf(antiLock, endS)),
    lengthenedM: lengthenedM(run, locked),
    shifts: scoredShifts(run, columns.placeM[followed.riseStep]!),
    missedDownshifts: missedDownshifts(run),
    timeLostS: timeLostS(run),
    ...steeringMeasures(run, followed),
  };
}

/** The lock-ups or the anti-lock's work of a run, in order. */
export function gripEvents({ end }: LiveRun, kind: GripEvent['kind']): GripEvent[] {
  return end.events.filter((event): event is GripEvent => event.kind === kind);
}

function brakePoint(
  { columns, zone }: LiveRun,
  { riseStep }: FollowedTarget,
): Pick<LiveMeasures, 'brakePointErrorM' | 'brakePointErrorS'> {
  const errorM = columns.placeM[riseStep]! - zone.derived.zone.brakePointM;
  return { brakePointErrorM: errorM, brakePointErrorS: errorM / columns.speedMps[riseStep]! };
}

function releaseError(run: LiveRun, { ownS, followedS }: ReleaseStarts): number | null {
  if (ownS === null || followedS === null) return null;
  const { placeM } = run.columns;
  return placeM[stepOf(run, ownS)]! - placeM[stepOf(run, followedS)]!;
}

function speedAt(run: LiveRun, sM: number): number {
  const { speedMps } = run.columns;
  return speedMps[stepAtPlace(run, sM) ?? speedMps.length - 1]!;
}

function apex(
  run: LiveRun,
  { level }: FollowedTarget,
): Pick<LiveMeasures, 'apexLevel' | 'apexLevelError'> {
  const step = stepAtPlace(run, run.zone.derived.keys.apex.sM);
  if (step === null) return { apexLevel: null, apexLevelError: null };
  const apexLevel = run.columns.level[step]!;
  return { apexLevel, apexLevelError: apexLevel - level[step]! };
}

/** From the first braking to the slowest point. */
function gripUse(run: LiveRun, { riseStep }: FollowedTarget): number {
  const { frontUse, rearUse } = run.columns;
  const end = slowestStep(run);
  let sum = 0;
  for (let i = riseStep; i <= end; i++) sum += Math.min(1, Math.max(frontUse[i]!, rearUse[i]!));
  return sum / Math.max(1, end - riseStep + 1);
}

/** A target that uses all of the grip may itself keep the anti-lock at work: only a foot above it counts. */
function turnedS(run: LiveRun, followed: FollowedTarget, stretches: readonly Stretch[]): number {
  const turnIn = stepAtPlace(run, 0);
  if (turnIn === null) return 0;
  let steps = 0;
  for (const { fromS, toS } of stretches)
    for (let i = Math.max(turnIn, stepOf(run, fromS)); i < stepOf(run, toS); i++)
      if (isAbove(run, followed, i)) steps += 1;
  return steps * STEP_S;
}

/** Both clocks start where the car began to roll: the approach to the target's brake point is driven at one speed. */
function timeLostS(run: LiveRun): number | null {
  const { timeS } = run.columns;
  const { derived, corner, rollFromM } = run.zone;
  const { slowestM, brakePointM, durationS } = derived.zone;
  const step = stepAtPlace(run, slowestM);
  if (step === null) return null;
  const targetS = (brakePointM - rollFromM) / corner.approachSpeedMps + durationS;
  return timeS[step]! - timeS[0]! - targetS;
}

/** Step at the target's slowest point, or the last one where the car never got there. */
function slowestStep(run: LiveRun): number {
  const { columns, zone } = run;
  return stepAtPlace(run, zone.derived.zone.slowestM) ?? columns.placeM.length - 1;
}
