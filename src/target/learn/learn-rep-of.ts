import { findOnset } from '../../score/onset.ts';
import { type RepSignal, repSignal } from '../../score/rep-signal.ts';
import { hasGap } from '../../score/score-flags.ts';
import { RATE_HZ } from '../../score/scoring-filter.ts';
import { zoneKeys } from '../../score/zone-keys.ts';
import type { RepRecord } from '../../trace/rep-record.ts';
import type { LearnRep, LeftOut } from './learn-rep.ts';
import { turnInOf } from './turn-in.ts';

/** Landmarks closer than this make warps that say nothing. */
export const CLOSEST_S = 0.02;

/**
 * A record as a rep to learn from: its landmarks by the score's own estimators, held against no target; or the reason
 * why it cannot be taken.
 *
 * @throws Problem for a record of more than ten minutes
 */
export function learnRepOf(record: RepRecord, number: number): LearnRep | LeftOut {
  const signal = repSignal(record);
  const keys = zoneKeys(record);
  if (signal === null || keys === null) return { number, reason: 'never braked' };
  const { startOfReleaseS, brakeOffS } = keys;
  if (startOfReleaseS === null || brakeOffS === null)
    return { number, reason: 'never off the brake' };
  if (hasGap(record, keys.onsetS, brakeOffS)) return { number, reason: 'a gap in the recording' };
  if (isTwice(signal, brakeOffS)) return { number, reason: 'off the brake and on it again' };
  if (brakeOffS - startOfReleaseS < CLOSEST_S || startOfReleaseS - keys.onsetS < CLOSEST_S)
    return { number, reason: 'no release to be seen: it goes off at once' };
  return {
    number,
    levels: signal.raw,
    startS: signal.startS,
    restingLevel: signal.threshold.restingLevel,
    landmarksS: {
      onset: keys.onsetS,
      'near peak': keys.nearPeakS,
      'start of release': startOfReleaseS,
      'brake off': brakeOffS,
    },
    turnInS: turnInOf(record.steering, keys.onsetS, brakeOffS),
    steering: record.steering,
  };
}

/** The reps that can be taken, and those that cannot. */
export function sorted(reps: readonly (LearnRep | LeftOut)[]): {
  readonly used: readonly LearnRep[];
  readonly leftOut: readonly LeftOut[];
} {
  return {
    used: reps.flatMap((rep) => ('reason' in rep ? [] : [rep])),
    leftOut: reps.flatMap((rep) => ('reason' in rep ? [rep] : [])),
  };
}

/** Off the brake and on it again before it is off for good. */
function isTwice({ levels, startS, threshold, onset }: RepSignal, offS: number): boolean {
  const last = Math.round((offS - startS) * RATE_HZ);
  const off = levels.findIndex((level, i) => i > (onset ?? 0) && level < threshold.offLevel);
  if (off < 0 || off >= last) return false;
  return findOnset(levels.subarray(0, last), threshold, off) !== null;
}
