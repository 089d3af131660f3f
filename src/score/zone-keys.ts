import type { RepRecord } from '../trace/rep-record.ts';
import { highest } from './crossings.ts';
import { findNearPeak, findRelease } from './key-indices.ts';
import type { KeyPoints } from './rep-score.ts';
import { repSignal } from './rep-signal.ts';
import { RATE_HZ } from './scoring-filter.ts';

/**
 * Key points of a braking that is held against no target: the score's filter and estimators, with the peak in the
 * place of the plateau. Null where there is no braking.
 *
 * @throws Problem for a record of more than ten minutes
 */
export function zoneKeys(record: RepRecord): KeyPoints | null {
  const signal = repSignal(record);
  if (signal === null || signal.onset === null) return null;
  const { levels, onset, startS, threshold } = signal;
  const peak = highest(levels, onset, levels.length - 1);
  const peakLevel = levels[peak]!;
  const release = findRelease(levels, peak, peakLevel, threshold.offLevel);
  const timeS = (index: number): number => startS + index / RATE_HZ;
  const maybe = (index: number | null): number | null => (index === null ? null : timeS(index));
  return {
    onsetS: timeS(onset),
    peakS: timeS(peak),
    peakLevel,
    nearPeakS: timeS(findNearPeak(levels, onset, peak, peakLevel)),
    startOfReleaseS: maybe(release.startOfRelease),
    halfReleaseS: maybe(release.halfRelease),
    finalReleaseS: maybe(release.finalRelease),
    brakeOffS: maybe(release.brakeOff),
  };
}
