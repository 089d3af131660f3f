import { type Estimate, estimate, REPS_FOR_MEDIAN, REPS_FOR_SPREAD } from './estimate.ts';
import { isoWeek } from './iso-week.ts';
import { mean } from './mean.ts';
import { median } from './median.ts';
import { type Reps, repsWhere, sharedOf } from './rep-columns.ts';
import type { Conditions, RepNumbers } from './rep-measure.ts';
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

/**
 * The counts are made at once, the statistics when somebody asks for one of them: of years of days a page shows the
 * last few.
 *
 * @param reps at least one, all of one day and comparable
 */
export function practiceDay(reps: Reps, changed: readonly (keyof Conditions)[]): PracticeDay {
  const { day, zone } = sharedOf(reps, 0);
  let made: Statistics | null = null;
  const known = (): Statistics => {
    made ??= statistics(reps);
    return made;
  };
  return {
    day,
    zone,
    week: isoWeek(day),
    conditions: conditionsOf(reps),
    changed,
    ...countsOf(reps),
    get measured() {
      return known().measured;
    },
    get medianScore() {
      return known().medianScore;
    },
    get medianReleaseErrorLevel() {
      return known().medianReleaseErrorLevel;
    },
    get averageErrorLevel() {
      return known().averageErrorLevel;
    },
    get amountSpreadLevel() {
      return known().amountSpreadLevel;
    },
    get timingSpreadS() {
      return known().timingSpreadS;
    },
    get reapplicationsPerRep() {
      return known().reapplicationsPerRep;
    },
  };
}

function countsOf({ columns, places }: Reps): Counts {
  const { shared, sharedAt } = columns;
  const counts = { ...NOTHING };
  for (let i = 0; i < places.length; i++) {
    const { voided, feedback, warmUp } = shared[sharedAt[places[i]!]!]!;
    if (voided !== null) counts[VOIDED[voided]]++;
    else {
      counts.reps++;
      counts[DRIVEN[feedback]]++;
      if (warmUp) counts.warmUp++;
    }
  }
  return counts;
}

type Counts = Pick<
  PracticeDay,
  'reps' | 'shown' | 'hidden' | 'firstOfDay' | 'warmUp' | 'aborted' | 'deviceLost'
>;

const NOTHING: Counts = {
  reps: 0,
  shown: 0,
  hidden: 0,
  firstOfDay: 0,
  warmUp: 0,
  aborted: 0,
  deviceLost: 0,
};
const VOIDED = { aborted: 'aborted', 'device lost': 'deviceLost' } as const;
const DRIVEN = { shown: 'shown', hidden: 'hidden', 'first-of-day': 'firstOfDay' } as const;

type Statistics = Pick<
  PracticeDay,
  | 'measured'
  | 'medianScore'
  | 'medianReleaseErrorLevel'
  | 'averageErrorLevel'
  | 'amountSpreadLevel'
  | 'timingSpreadS'
  | 'reapplicationsPerRep'
>;

/** Of the reps that ran to their end, warm-up left out. */
function statistics(reps: Reps): Statistics {
  const { columns, places } = repsWhere(reps, ({ voided, warmUp }) => voided === null && !warmUp);
  const all = (name: keyof RepNumbers): number[] => {
    const column = columns.numbers[name];
    const values: number[] = [];
    for (let i = 0; i < places.length; i++) {
      const value = column[places[i]!]!;
      if (!Number.isNaN(value)) values.push(value);
    }
    return values;
  };
  const releaseErrors = all('releaseErrorLevel');
  const averageErrors = all('averageErrorLevel');
  const starts = all('startOfReleaseErrorS');
  return {
    measured: releaseErrors.length,
    medianScore: estimate(all('score'), REPS_FOR_MEDIAN, median),
    medianReleaseErrorLevel: estimate(releaseErrors, REPS_FOR_MEDIAN, median),
    averageErrorLevel: estimate(averageErrors, REPS_FOR_MEDIAN, mean),
    amountSpreadLevel: estimate(averageErrors, REPS_FOR_SPREAD, standardDeviation),
    timingSpreadS: estimate(starts, REPS_FOR_SPREAD, standardDeviation),
    reapplicationsPerRep: mean(all('reapplications')),
  };
}

/** Those of the first rep; the score version is that of the first rep that has one. */
function conditionsOf(reps: Reps): Conditions {
  const { shared, sharedAt } = reps.columns;
  for (const place of reps.places) {
    const { conditions } = shared[sharedAt[place]!]!;
    if (conditions.scoreVersion !== null) return conditions;
  }
  return sharedOf(reps, 0).conditions;
}
