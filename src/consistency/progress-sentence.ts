import type { Estimate } from './estimate.ts';
import type { TargetProgress } from './target-progress.ts';

/**
 * What is known of the newest row and what is not yet, in one sentence of at most 80 characters. It claims no change
 * over time: that takes statistics that this summary does not hold.
 */
export function progressSentence({ days }: TargetProgress): string {
  const last = days.at(-1);
  if (last === undefined) return 'There is no rep yet.';
  const { medianScore, medianReleaseErrorLevel, amountSpreadLevel } = last;
  if (medianScore.value === null)
    return `Nothing can be said yet: ${missing(medianScore)} on ${last.day} would give a median.`;
  if (medianReleaseErrorLevel.value === null)
    return `The score is known, errors not: ${missing(medianReleaseErrorLevel)} with a release would do.`;
  if (amountSpreadLevel.value === null)
    return `The level is known, the spread is not: ${missing(amountSpreadLevel)} would give it.`;
  return 'Level and spread of the last day are known.';
}

function missing({ reps, needed }: Estimate): string {
  const more = needed - reps;
  return `${more} more rep${more === 1 ? '' : 's'}`;
}
