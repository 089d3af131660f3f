import { fQuantile } from '../distribution/f-distribution.ts';
import { type Interval, USUAL_LEVEL } from '../interval.ts';
import { spreadInterval } from '../summary/spread-interval.ts';
import { type GroupSums, groupSums, type PooledSpread, pooled } from './pooled-spread.ts';
import { type Verdict, verdict } from './verdict.ts';

/** Spread of one period. */
interface PeriodSpread {
  /** Null where no practice has two reps. */
  readonly deviation: number | null;
  readonly interval: Interval | null;
  readonly reps: number;
  /** Reps that are missing before a change may be claimed; each further practice costs one more. */
  readonly missing: number;
}

/** How the spread of one period compares with that of an earlier one. */
export interface SpreadChange {
  readonly before: PeriodSpread;
  readonly now: PeriodSpread;
  /** Now over before; null where a side has no spread. */
  readonly ratio: number | null;
  readonly ratioInterval: Interval | null;
  /** Null below the reps it takes. */
  readonly verdict: Verdict | null;
  /** A change that would be claimed, more than half of which is due to one practice. */
  readonly hangsOnOne: boolean;
}

/**
 * From 35 reps on each side a spread that is seen to be 30 % smaller is smaller by more than chance (F test, 95 %, two
 * sides; 33 would just do). A true fall by 30 % is then found every second time, with 65 on each side four times of
 * five.
 */
export const REPS_FOR_SPREAD_CHANGE = 35;

const NORMAL_KURTOSIS = 3;

/**
 * Compares the spread from rep to rep within practices by the F distribution. Where tails are heavier than those of a
 * normal distribution fewer degrees of freedom are counted (Shoemaker 2003, The American Statistician 57:105): a few
 * wild reps say less than they seem to. A change is claimed only if no single practice makes up more than half of it,
 * in the logarithm: one bad day, or one good one, is no change of the foot (a rule of our own, without a source).
 *
 * @param before,now values of each practice of the period
 */
export function spreadChange(
  before: readonly (readonly number[])[],
  now: readonly (readonly number[])[],
  level: number = USUAL_LEVEL,
): SpreadChange {
  const groups = [before.map(groupSums), now.map(groupSums)] as const;
  const spreads = [pooled(groups[0]), pooled(groups[1])] as const;
  const share = tailShare(spreads);
  const sides = {
    before: periodSpread(spreads[0], share, level),
    now: periodSpread(spreads[1], share, level),
  };
  const ratio = ratioOf(spreads);
  if (ratio === null)
    return { ...sides, ratio, ratioInterval: null, verdict: null, hangsOnOne: false };
  const ratioInterval = intervalOf(ratio, spreads, share, level);
  const isEnough = sides.before.missing === 0 && sides.now.missing === 0;
  const found = isEnough ? verdict(ratioInterval, 1) : null;
  const isClaim = found !== null && found !== 'no clear change';
  const hangsOnOne = isClaim && !holdsWithoutAny(...groups, ratio);
  return {
    ...sides,
    ratio,
    ratioInterval,
    verdict: hangsOnOne ? 'no clear change' : found,
    hangsOnOne,
  };
}

const LEFT_WITHOUT_ONE = 0.5;

/** Whether half of the change is left without any one practice of either side. */
function holdsWithoutAny(
  before: readonly GroupSums[],
  now: readonly GroupSums[],
  whole: number,
): boolean {
  const holds = (one: typeof before, other: typeof now): boolean => {
    const ratio = ratioOf([pooled(one), pooled(other)]);
    if (ratio === null) return false;
    return Math.log(ratio) / Math.log(whole) >= LEFT_WITHOUT_ONE;
  };
  return (
    before.every((_, i) => holds(before.toSpliced(i, 1), now)) &&
    now.every((_, i) => holds(before, now.toSpliced(i, 1)))
  );
}

type Pair = readonly [before: PooledSpread | null, now: PooledSpread | null];

function ratioOf([before, now]: Pair): number | null {
  if (before === null || now === null || before.deviation === 0) return null;
  return now.deviation / before.deviation;
}

function intervalOf(ratio: number, [before, now]: Pair, share: number, level: number): Interval {
  const degreesNow = share * now!.degrees;
  const degreesBefore = share * before!.degrees;
  const tail = (1 - level) / 2;
  return {
    low: ratio / Math.sqrt(fQuantile(1 - tail, degreesNow, degreesBefore)),
    high: ratio * Math.sqrt(fQuantile(1 - tail, degreesBefore, degreesNow)),
    level,
  };
}

function periodSpread(spread: PooledSpread | null, share: number, level: number): PeriodSpread {
  const missing = Math.max(0, REPS_FOR_SPREAD_CHANGE - 1 - (spread?.degrees ?? -1));
  if (spread === null) return { deviation: null, interval: null, reps: 0, missing };
  const interval = spreadInterval(spread.deviation, share * spread.degrees, level);
  return { deviation: spread.deviation, interval, reps: spread.values, missing };
}

/**
 * By how much the degrees of freedom shrink: 2 over the kurtosis less 1, which is 1 for a normal distribution; never
 * more, because light tails in few values are mostly chance. Both sides are taken to have the same shape.
 */
function tailShare(spreads: Pair): number {
  let [values, fourth] = [0, 0];
  for (const spread of spreads)
    if (spread !== null && spread.deviation > 0) {
      values += spread.values;
      fourth += spread.fourthPowers / spread.deviation ** 4;
    }
  const kurtosis = values === 0 ? NORMAL_KURTOSIS : fourth / values;
  return (NORMAL_KURTOSIS - 1) / (Math.max(NORMAL_KURTOSIS, kurtosis) - 1);
}
