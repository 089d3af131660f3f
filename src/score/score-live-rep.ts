import { driveRecord } from '../live/drive-record.ts';
import type { SlowerWay } from '../live/follow-law.ts';
import { type FollowedTarget, followedTarget } from '../live/followed-target.ts';
import type { LiveRun } from '../live/live-run.ts';
import type { LiveZone } from '../live/live-zone.ts';
import { quantiseRecord } from '../trace/quantise-record.ts';
import type { RepRecord } from '../trace/rep-record.ts';
import { type AlignedRep, alignRep } from './aligned-rep.ts';
import { easedForLockUps } from './eased-for-lock-ups.ts';
import { followedReference, riseBefore } from './followed-reference.ts';
import { footLockUps } from './held-lock-ups.ts';
import { atOnce, type InPieces } from './in-pieces.ts';
import { liveParts, livePointsLost, liveScoreOf } from './live-parts.ts';
import { LIVE_SCORE_VERSION } from './live-score-version.ts';
import { liveSignal } from './live-signal.ts';
import { gripEvents, measureLive } from './measure-live.ts';
import { countReapplications, measureRep, type RepMeasures } from './measure-rep.ts';
import { noRep } from './no-rep.ts';
import type { RepOutcome, RepScore } from './rep-score.ts';
import type { RepSignal } from './rep-signal.ts';
import { LEAST_PEAK_SHARE } from './score-version.ts';
import { RATE_HZ } from './scoring-filter.ts';
import { type Stretch, stretchesOf } from './stretches.ts';
import { type TargetReference, targetReference } from './target-reference.ts';

/** Drives the zone from the record and scores it; quantised or not, the record gives the same outcome. */
export function scoreLiveRep(record: RepRecord, zone: LiveZone): RepOutcome {
  const kept = quantiseRecord(record);
  return scoreLiveRun(kept, driveRecord(zone, kept));
}

/** The same, to be done piece by piece. */
export function* scoreLiveRepInPieces(record: RepRecord, zone: LiveZone): InPieces<RepOutcome> {
  const kept = quantiseRecord(record);
  const run = driveRecord(zone, kept);
  yield;
  return yield* scoreRunInPieces(kept, run);
}

/**
 * Scores a zone that was driven, version 2: the measures of version 1 against the followed target, which begins where
 * the rep began and asks at every moment for what the grip allowed from the speed the car really had; a tenth of it for
 * the brake point. A pure function of record and zone, like the run itself.
 */
export function scoreLiveRun(record: RepRecord, run: LiveRun): RepOutcome {
  return atOnce(scoreRunInPieces(record, run));
}

function* scoreRunInPieces(record: RepRecord, run: LiveRun): InPieces<RepOutcome> {
  const rep = liveSignal(record, run);
  if (rep === null) return noRep('too few samples', LIVE_SCORE_VERSION, record, null);
  const { onset } = rep;
  if (onset === null) return noRep('never braked', LIVE_SCORE_VERSION, record, rep);
  const braked = { ...rep, onset };
  let best = yield* scoreAgainst(record, run, braked, 'ratio');
  for (const way of OTHER_WAYS) {
    if (best.kind === 'scored' && best.parts.release === 1) break;
    yield;
    const other = yield* scoreAgainst(record, run, braked, way);
    if (other.score > best.score) best = other;
  }
  return best;
}

/** Several things are right for a car that is slower than the target; a rep is held against the one it is closest to. */
const OTHER_WAYS: readonly SlowerWay[] = ['place', 'speed'];

type Braked = RepSignal & { readonly onset: number };

function* scoreAgainst(
  record: RepRecord,
  run: LiveRun,
  rep: Braked,
  way: SlowerWay,
): InPieces<RepOutcome> {
  const riseS = riseBefore(run, rep.onset, onsetDelay(run));
  const followed = followedTarget(run.zone, run, riseS, way);
  const target = followedReference(run, followed);
  if (typeof target === 'string') return noRep(target, LIVE_SCORE_VERSION, record, rep);
  const reference = targetReference(target);
  yield;
  const eased = easedForLockUps(rep, followed.level, lockUpsOf(run, followed));
  const aligned = alignRep(eased, rep.onset, reference);
  if (aligned.keys.peakLevel < LEAST_PEAK_SHARE * target.peakLevel) {
    return noRep('peak below a tenth of the target', LIVE_SCORE_VERSION, record, rep);
  }
  return yield* score(record, run, {
    rep: { ...eased, onset: rep.onset },
    followed,
    aligned,
    reference,
  });
}

/** How late the onset is found on the target's own rise, in steps. */
function onsetDelay({ zone }: LiveRun): number {
  const { keys, originS, target } = targetReference(zone.target);
  return keys.onset - Math.round((target.marks.rise - originS) * RATE_HZ);
}

function lockUpsOf(run: LiveRun, followed: FollowedTarget): Stretch[] {
  const { timeS } = run.columns;
  const lockUps = footLockUps(run, followed, gripEvents(run, 'lock-up'));
  return stretchesOf(lockUps, timeS[timeS.length - 1]!);
}

interface Laid {
  readonly rep: Braked;
  readonly followed: FollowedTarget;
  readonly aligned: AlignedRep;
  readonly reference: TargetReference;
}

function* score(record: RepRecord, run: LiveRun, laid: Laid): InPieces<RepScore> {
  const { rep, followed, aligned, reference } = laid;
  const measures = lessThoseAsked(measureRep(record, rep, aligned, reference), record, reference);
  yield;
  const { startOfRelease } = reference.keys;
  const live = measureLive(run, followed, {
    ownS: measures.keyPoints.startOfReleaseS,
    followedS: startOfRelease === null ? null : aligned.timeS(startOfRelease),
  });
  const parts = liveParts({ ...measures, ...live });
  return {
    kind: 'scored',
    version: LIVE_SCORE_VERSION,
    score: liveScoreOf(parts),
    parts,
    pointsLost: livePointsLost(parts),
    ...measures,
    live,
  };
}

/**
 * Where the road asks for pressure again, as between two apexes, only what goes beyond that is a re-application: by more
 * than the step in which rises are counted, by which two alike can differ.
 */
function lessThoseAsked(
  measures: RepMeasures,
  { brakeStepLevel }: RepRecord,
  reference: TargetReference,
): RepMeasures {
  const asked = countReapplications(reference, reference, brakeStepLevel);
  if (asked.share === 0) return measures;
  return {
    ...measures,
    reapplications: Math.max(0, measures.reapplications - asked.count),
    reapplied: Math.max(0, measures.reapplied - asked.share - asked.stepShare),
  };
}
