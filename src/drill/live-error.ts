import { addSample, type Deviation } from '../score/deviation.ts';
import type { Target } from '../target/target.ts';
import type { Track } from '../trace/track.ts';

/** Seconds before the start of release and after brake off that the error looks at, as the score does. */
const BEFORE_S = 0.05;
const AFTER_S = 0.25;

/** A stretch of a rep: samples `from` to `to` (exclusive) of a track that held `held` at `startS`. */
interface Stretch {
  readonly track: Track;
  readonly from: number;
  readonly to: number;
  readonly held: number;
  readonly startS: number;
  readonly endS: number;
  /** Time of the target's zero. */
  readonly originS: number;
  /** Target time of a moment since then; left out where it is the same. */
  readonly placeAt?: ((sinceS: number) => number) | null;
}

/** The live error with one more stretch, by the error step of the score; each value holds until the next sample and meets the target halfway there. */
export function addStretch(sum: Deviation, target: Target, stretch: Stretch): Deviation {
  const { track, from, to, startS, endS, originS, placeAt = null } = stretch;
  if (placeAt !== null) return addPlaced(sum, target, stretch, placeAt);
  const windowFromS = originS + target.marks.startOfRelease - BEFORE_S;
  const windowToS = originS + target.marks.brakeOff + AFTER_S;
  let deviation = sum;
  let level = stretch.held;
  let sinceS = startS;
  for (let i = from; i <= to; i++) {
    const untilS = i < to ? track.timeS[i]! : endS;
    const a = Math.max(sinceS, windowFromS);
    const b = Math.min(untilS, windowToS);
    if (b > a)
      deviation = addSample(deviation, level, target.level.at((a + b) / 2 - originS), b - a);
    sinceS = untilS;
    level = track.value[i]!;
  }
  return deviation;
}

/** The same where the place on the target does not follow the clock. */
function addPlaced(
  sum: Deviation,
  { level, marks }: Target,
  { track, from, to, held, startS, endS, originS }: Stretch,
  placeAt: (sinceS: number) => number,
): Deviation {
  let deviation = sum;
  let own = held;
  let sinceS = startS;
  for (let i = from; i <= to; i++) {
    const untilS = i < to ? track.timeS[i]! : endS;
    const placeS = placeAt((sinceS + untilS) / 2 - originS);
    const counts = placeS >= marks.startOfRelease - BEFORE_S && placeS <= marks.brakeOff + AFTER_S;
    if (counts && untilS > sinceS)
      deviation = addSample(deviation, own, level.at(placeS), untilS - sinceS);
    sinceS = untilS;
    own = track.value[i]!;
  }
  return deviation;
}
