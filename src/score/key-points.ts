import type { AlignedRep } from './aligned-rep.ts';
import type { KeyIndices } from './key-indices.ts';
import type { KeyPoints, RepScore } from './rep-score.ts';
import { RATE_HZ } from './scoring-filter.ts';

/** The rep's key points in record time. */
export function keyPointTimes({ keys, timeS }: AlignedRep): KeyPoints {
  const maybe = (index: number | null): number | null => (index === null ? null : timeS(index));
  return {
    onsetS: timeS(keys.onset),
    peakS: timeS(keys.peak),
    peakLevel: keys.peakLevel,
    nearPeakS: timeS(keys.nearPeak),
    startOfReleaseS: maybe(keys.startOfRelease),
    halfReleaseS: maybe(keys.halfRelease),
    finalReleaseS: maybe(keys.finalRelease),
    brakeOffS: maybe(keys.brakeOff),
  };
}

/** Rep minus target on the common grid, where both got there. */
export function keyPointErrors(rep: KeyIndices, target: KeyIndices): RepScore['keyPointErrorsS'] {
  return {
    startOfRelease: difference(rep.startOfRelease, target.startOfRelease),
    halfRelease: difference(rep.halfRelease, target.halfRelease),
    finalRelease: difference(rep.finalRelease, target.finalRelease),
    brakeOff: difference(rep.brakeOff, target.brakeOff),
  };
}

function difference(rep: number | null, target: number | null): number | null {
  return rep === null || target === null ? null : (rep - target) / RATE_HZ;
}

/** Rise time minus the target's, onset to 90 % of the own peak. */
export function riseError(rep: KeyIndices, target: KeyIndices): number {
  return (rep.nearPeak - rep.onset - (target.nearPeak - target.onset)) / RATE_HZ;
}
