import { type Estimate, estimate, REPS_FOR_MEDIAN, REPS_FOR_SPREAD } from './estimate.ts';
import { isoWeek } from './iso-week.ts';
import { mean } from './mean.ts';
import { median } from './median.ts';
import type { Conditions, RepMeasure, RepNumbers } from './rep-measure.ts';
import { standardDeviation } from './standard-deviation.ts';

/** The reps of one target on one day under the same conditions, summed up. Levels are 0..1 of full scale. */
export interface PracticeDay {
  readonly day: string;
  /** ISO 8601 week. */
  readonly week: string;
  readonly zone: string;
  readonly conditions: Conditions;
  /** What changed since the row before; nothing may be averaged or compared across it. */
  readonly changed: readonly (keyof Conditions)[];
  /** All reps that ran to their end, warm-up included. */
  readonly reps: number;
  readonly shown: number;
  /** First-of-day reps are counted by themselves. */
  readonly hidden: number;
  readonly firstOfDay: number;
  /** Counted, but in none of the statistics. */
  readonly warmUp: number;
  readonly aborted: number;
  readonly deviceLost: number;
  /** Reps whose release could be measured, warm-up left out: what the errors are made of. */
  readonly measured: number;
  /** Median over all reps, those without a release as 0. */
  readonly medianScore: Estimate;
  readonly medianReleaseErrorLevel: Estimate;
  /** Mean of the signed differences: positive is heavy. */
  readonly averageErrorLevel: Estimate;
  /** Standard deviation of the signed differences from rep to rep. */
  readonly amountSpreadLevel: Estimate;
  /** Standard deviation of the start of release from rep to rep. */
  readonly timingSpreadS: Estimate;
  /** Mean; null without a measured rep. */
  readonly reapplicationsPerRep: number | null;
}

/** @param reps at least one, all of one day and comparable */
export function practiceDay(
  reps: readonly RepMeasure[],
  changed: readonly (keyof Conditions)[],
): PracticeDay {
  const { day, zone } = reps[0]!;
  const valid = reps.filter(({ voided }) => voided === null);
  const numbers: RepNumbers[] = [];
  for (const rep of valid) if (!rep.warmUp && rep.numbers !== null) numbers.push(rep.numbers);
  return {
    day,
    zone,
    week: isoWeek(day),
    conditions: conditionsOf(reps),
    changed,
    reps: valid.length,
    shown: count(valid, ({ feedback }) => feedback === 'shown'),
    hidden: count(valid, ({ feedback }) => feedback === 'hidden'),
    firstOfDay: count(valid, ({ feedback }) => feedback === 'first-of-day'),
    warmUp: count(valid, ({ warmUp }) => warmUp),
    aborted: count(reps, ({ voided }) => voided === 'aborted'),
    deviceLost: count(reps, ({ voided }) => voided === 'device lost'),
    ...statistics(numbers),
  };
}

function statistics(
  numbers: readonly RepNumbers[],
): Pick<
  PracticeDay,
  | 'measured'
  | 'medianScore'
  | 'medianReleaseErrorLevel'
  | 'averageErrorLevel'
  | 'amountSpreadLevel'
  | 'timingSpreadS'
  | 'reapplicationsPerRep'
> {
  const all = (pick: (one: RepNumbers) => number | null): number[] => {
    const values: number[] = [];
    for (const one of numbers) {
      const value = pick(one);
      if (value !== null) values.push(value);
    }
    return values;
  };
  const releaseErrors = all((one) => one.releaseErrorLevel);
  const averageErrors = all((one) => one.averageErrorLevel);
  const starts = all((one) => one.startOfReleaseErrorS);
  return {
    measured: releaseErrors.length,
    medianScore: estimate(
      all(({ score }) => score),
      REPS_FOR_MEDIAN,
      median,
    ),
    medianReleaseErrorLevel: estimate(releaseErrors, REPS_FOR_MEDIAN, median),
    averageErrorLevel: estimate(averageErrors, REPS_FOR_MEDIAN, mean),
    amountSpreadLevel: estimate(averageErrors, REPS_FOR_SPREAD, standardDeviation),
    timingSpreadS: estimate(starts, REPS_FOR_SPREAD, standardDeviation),
    reapplicationsPerRep: mean(all((one) => one.reapplications)),
  };
}

/** Those of the first rep; the score version is that of the first rep that has one. */
function conditionsOf(reps: readonly RepMeasure[]): Conditions {
  const scored = reps.find(({ conditions }) => conditions.scoreVersion !== null);
  return (scored ?? reps[0]!).conditions;
}

function count(reps: readonly RepMeasure[], is: (rep: RepMeasure) => boolean): number {
  let found = 0;
  for (const rep of reps) if (is(rep)) found++;
  return found;
}
