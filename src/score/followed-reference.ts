import type { FollowedTarget } from '../live/followed-target.ts';
import type { LiveRun } from '../live/live-run.ts';
import { stepAtPlace, stepOf } from '../live/run-steps.ts';
import type { Target, TargetMarks } from '../target/target.ts';
import { DEFAULT_CORRIDOR } from '../target/target-spec.ts';
import type { NoRepReason } from './rep-score.ts';
import { LEAST_PEAK_SHARE } from './score-version.ts';
import { RATE_HZ } from './scoring-filter.ts';

/** The final release is the last tenth of the level at the start of release. */
const FINAL_RELEASE_SHARE = 0.1;

/**
 * The followed target as a target over time on the record's own clock, so that version 1's measures apply to it. The
 * release starts where the derived target's does, by place: the same road, whatever the time it took to get there.
 *
 * @returns the reason where the run left nothing to release
 */
export function followedReference(
  run: LiveRun,
  followed: FollowedTarget,
): Target | Extract<NoRepReason, 'braked too late' | 'stopped before the release'> {
  const { derived, target } = run.zone;
  const peakLevel = followed.level.reduce((a, b) => Math.max(a, b), 0);
  if (peakLevel < LEAST_PEAK_SHARE * derived.keys.peak.level) return 'braked too late';
  const markStep = releaseStep(run, followed);
  if (markStep === null) return 'stopped before the release';
  const startS = run.columns.timeS[0]!;
  const at = (timeS: number): number => followed.level[Math.round((timeS - startS) * RATE_HZ)] ?? 0;
  const marks = marksOf(run, followed, markStep);
  const { floorLevel, share } = DEFAULT_CORRIDOR;
  return {
    ...target,
    domain: 'time',
    level: { start: marks.rise, end: marks.brakeOff, at },
    marks,
    peakLevel,
    corridorAt: (timeS) => Math.max(floorLevel, share * at(timeS)),
  };
}

/** First step at the place of the target's start of release, or where a later application has met its limit. */
function releaseStep(run: LiveRun, { metStep }: FollowedTarget): number | null {
  const placed = stepAtPlace(run, run.zone.derived.keys.startOfRelease.sM);
  return placed === null || metStep === null ? null : Math.max(placed, metStep);
}

function marksOf(
  run: LiveRun,
  { level, riseStep, metStep }: FollowedTarget,
  mark: number,
): TargetMarks {
  const { timeS } = run.columns;
  const { apex, slowest } = run.zone.derived.keys;
  const passed = (sM: number): number | null => {
    const step = stepAtPlace(run, sM);
    return step === null ? null : timeS[step]!;
  };
  const lastAbove = (least: number): number =>
    timeS[Math.min(level.findLastIndex((value) => value > least) + 1, timeS.length - 1)]!;
  return {
    rise: timeS[riseStep]!,
    peak: timeS[metStep ?? mark]!,
    startOfRelease: timeS[mark]!,
    turnIn: passed(0),
    apex: passed(Math.min(apex.sM, slowest.sM)),
    finalRelease: lastAbove(FINAL_RELEASE_SHARE * level[mark]!),
    brakeOff: Math.max(lastAbove(0), timeS[mark]!),
  };
}

/** When a rise must have begun for its onset to be found at a step of the run. */
export function riseBefore(run: LiveRun, onset: number, delaySteps: number): number {
  return run.columns.timeS[stepOf(run, run.columns.timeS[0]! + (onset - delaySteps) / RATE_HZ)]!;
}
