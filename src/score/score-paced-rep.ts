import { pacedStretch } from '../target/paced-stretch.ts';
import type { Target } from '../target/target.ts';
import type { RepRecord } from '../trace/rep-record.ts';
import { noRep } from './no-rep.ts';
import { pacedClock, pacedTarget } from './paced-target.ts';
import type { RepOutcome } from './rep-score.ts';
import { repSignal } from './rep-signal.ts';
import { scoreRep } from './score-rep.ts';
import { SCORE_VERSION } from './score-version.ts';
import { RATE_HZ } from './scoring-filter.ts';
import { targetReference } from './target-reference.ts';

/**
 * Scores a rep whose release was paced by the driver's own wheel: by the measures of every other rep, on the target as
 * that wheel asked for it. A brake that is eased with a late wheel is right, one that is eased by the clock is not. A
 * wheel that never went in asked for nothing, so there is no rep to measure.
 *
 * @param target over time, with a steering that can pace it (`pacedStretch`)
 * @throws Problem as `scoreRep` does; RangeError for a target that cannot be paced
 */
export function scorePacedRep(record: RepRecord, target: Target): RepOutcome {
  const stretch = pacedStretch(target);
  if (stretch === null) throw new RangeError(`${target.id} has no steering to pace it`);
  const rep = repSignal(record);
  if (rep === null || rep.onset === null) return scoreRep(record, target);
  const onsetS = rep.startS + rep.onset / RATE_HZ;
  const clock = pacedClock(record, stretch, onsetS - targetOnset(target));
  if (clock.reachedDeg < stretch.fromDeg)
    return noRep('wheel never turned in', SCORE_VERSION, record, rep);
  return scoreRep(record, pacedTarget(target, clock));
}

/** Target time of its onset, by the estimator that finds the rep's. */
function targetOnset(target: Target): number {
  const { keys, originS } = targetReference(target);
  return originS + keys.onset / RATE_HZ;
}
