import type { Target } from '../target/target.ts';
import type { Track } from '../trace/track.ts';

/** Squared difference from the target integrated over time: what the live error remembers. */
export interface LiveError {
  readonly squareS: number;
  readonly durationS: number;
}

export const NO_ERROR_YET: LiveError = { squareS: 0, durationS: 0 };

/** Seconds before the start of release and after brake off that the error looks at, as the score does. */
const BEFORE_S = 0.05;
const AFTER_S = 0.25;

/** A stretch of a rep: samples `from` to `to` (exclusive) of a track that held `held` at `startS`. */
export interface Stretch {
  readonly track: Track;
  readonly from: number;
  readonly to: number;
  readonly held: number;
  readonly startS: number;
  readonly endS: number;
  /** Time of the target's zero. */
  readonly originS: number;
}

/** The error with one more stretch; each value holds until the next sample and meets the target halfway there. */
export function addStretch(sum: LiveError, target: Target, stretch: Stretch): LiveError {
  const { track, from, to, startS, endS, originS } = stretch;
  const windowFromS = originS + target.marks.startOfRelease - BEFORE_S;
  const windowToS = originS + target.marks.brakeOff + AFTER_S;
  let { squareS, durationS } = sum;
  let level = stretch.held;
  let sinceS = startS;
  for (let i = from; i <= to; i++) {
    const untilS = i < to ? track.timeS[i]! : endS;
    const a = Math.max(sinceS, windowFromS);
    const b = Math.min(untilS, windowToS);
    if (b > a) {
      const error = level - target.level.at((a + b) / 2 - originS);
      squareS += error * error * (b - a);
      durationS += b - a;
    }
    sinceS = untilS;
    level = track.value[i]!;
  }
  return { squareS, durationS };
}

/** Root mean square so far, null before the release. */
export function rmsError({ squareS, durationS }: LiveError): number | null {
  return durationS > 0 ? Math.sqrt(squareS / durationS) : null;
}
