import { describeCause } from '../score/describe-cause.ts';
import type { Cause } from '../score/rep-score.ts';

/**
 * One sentence on what to change in the next block; it says what to do, not what was wrong.
 *
 * @param cause what most reps of the block shared; null where no three shared one
 * @param scoredReps reps the block has to say anything about
 */
export function blockAdvice(cause: Cause | null, scoredReps: number): string {
  if (scoredReps < 3) return 'Three scored reps or more are needed to name a cause.';
  if (cause === null) return 'No cause shared by three reps: aim for the same release every time.';
  if (describeCause(cause) === '') return 'Nothing to correct: do the same again.';
  return `Next block: ${changeFor(cause)}.`;
}

/** What to change about a cause, as words that follow `Next block:`. */
export function changeFor({ kind, timingS, rateRatio, amountRatio }: Cause): string {
  switch (kind) {
    case 'timing':
      return `start to release ${milliseconds(timingS)} ${timingS < 0 ? 'later' : 'earlier'}`;
    case 'rate':
      return `take ${percent(1 / rateRatio)} ${rateRatio < 1 ? 'more' : 'less'} time over the release`;
    case 'amount':
      return `${percent(1 / amountRatio)} ${amountRatio < 1 ? 'more' : 'less'} pressure through the release`;
    case 'shape':
      return 'follow the bends of the target; start, pace and weight are not what is different';
  }
}

const milliseconds = (timeS: number): string => `${10 * Math.round(Math.abs(timeS) * 100)} ms`;
const percent = (ratio: number): string => `${Math.round(100 * Math.abs(ratio - 1))} %`;
