import type { RepScore } from '../score/rep-score.ts';
import type { Target } from '../target/target.ts';
import type { RepRecord } from '../trace/rep-record.ts';
import type { Track } from '../trace/track.ts';

const POINTS = 201;

/**
 * The rep's level over the target's release, start of release to brake off, aligned by onset: equal places of all
 * curves are equal moments of the target.
 *
 * @param targetOnsetS the target's own onset by the rule that found the rep's
 */
export function releaseCurve(
  record: RepRecord,
  { keyPoints }: RepScore,
  { marks }: Target,
  targetOnsetS: number,
): Float64Array {
  const originS = keyPoints.onsetS - targetOnsetS;
  const stepS = (marks.brakeOff - marks.startOfRelease) / (POINTS - 1);
  return levelsOnGrid(record.brake, originS + marks.startOfRelease, stepS);
}

/** The track's value at `POINTS` moments; a value holds until the next one. */
function levelsOnGrid({ timeS, value }: Track, fromS: number, stepS: number): Float64Array {
  const levels = new Float64Array(POINTS);
  let next = 0;
  for (let i = 0; i < POINTS; i++) {
    while (next < timeS.length && timeS[next]! <= fromS + i * stepS) next++;
    levels[i] = next > 0 ? value[next - 1]! : 0;
  }
  return levels;
}
