import { pooledSpread } from '../change/pooled-spread.ts';
import { REPS_FOR_MEDIAN, REPS_FOR_SPREAD } from '../estimate.ts';
import { measureColumns } from '../measure-columns.ts';
import { median } from '../median.ts';
import { allReps } from '../rep-columns.ts';
import type { RepMeasure } from '../rep-measure.ts';
import { practiceValues } from '../weeks/practice-values.ts';
import { REPS_FOR_WEEK } from '../weeks/week-rows.ts';

/** How a driver stands in one corner before an event. Levels 0..1 of full scale; null under too few reps. */
export interface CornerForm {
  readonly name: string;
  /** Hidden reps with a release error. */
  readonly hiddenReps: number;
  /** Median of the hidden reps. */
  readonly releaseErrorLevel: number | null;
  /** From hidden rep to hidden rep within a practice. */
  readonly spreadLevel: number | null;
  /** Of the practices that the spread is made of. */
  readonly spreadReps: number;
  /** Median of the first-of-day reps less that of the hidden ones, never below 0. */
  readonly firstOfDayLossLevel: number | null;
  readonly firstOfDayReps: number;
  /** Local date of the newest rep that was driven to its end; null for never. */
  readonly lastDay: string | null;
  /** What a first lap there is expected to be off by: see `expectedErrorLevel`. */
  readonly expectedErrorLevel: number | null;
}

/** @param measures that compare with each other, oldest first */
export function cornerForm(name: string, measures: readonly RepMeasure[]): CornerForm {
  const practices = practiceValues(allReps(measureColumns(measures)));
  const hidden = practices.flatMap((one) => one.hidden.releaseErrorLevel);
  const first = practices.flatMap((one) => one.firstOfDay.releaseErrorLevel);
  const spread = pooledSpread(practices.map((one) => one.hidden.averageErrorLevel));
  const hiddenMedian = hidden.length < REPS_FOR_MEDIAN ? null : median(hidden);
  const firstMedian = first.length < REPS_FOR_WEEK ? null : median(first);
  const parts = {
    releaseErrorLevel: hiddenMedian,
    spreadLevel: spread === null || spread.values < REPS_FOR_SPREAD ? null : spread.deviation,
    firstOfDayLossLevel:
      hiddenMedian === null || firstMedian === null
        ? null
        : Math.max(0, firstMedian - hiddenMedian),
  };
  return {
    name,
    hiddenReps: hidden.length,
    spreadReps: spread?.values ?? 0,
    firstOfDayReps: first.length,
    lastDay: measures.findLast(({ voided }) => voided === null)?.day ?? null,
    ...parts,
    expectedErrorLevel: expectedErrorLevel(parts),
  };
}

/**
 * What a first lap is expected to be off by: the median release error of the hidden reps, which holds all that is wrong
 * in most of them; one spread more, because one lap in six is that much worse (normal distribution); and what first-of-day
 * reps were worse by, nothing where it is not known. Our own rule, no source: sums of levels, because each is lost in the
 * same release. Null where median or spread have too few reps.
 */
function expectedErrorLevel({
  releaseErrorLevel,
  spreadLevel,
  firstOfDayLossLevel,
}: Pick<CornerForm, 'releaseErrorLevel' | 'spreadLevel' | 'firstOfDayLossLevel'>): number | null {
  if (releaseErrorLevel === null || spreadLevel === null) return null;
  return releaseErrorLevel + spreadLevel + (firstOfDayLossLevel ?? 0);
}
