import { type Verdict, verdict } from '../change/verdict.ts';
import type { Interval } from '../interval.ts';
import { lagAutocorrelation, NOTABLE_AUTOCORRELATION } from '../summary/lag-autocorrelation.ts';
import { type MannKendall, mannKendall } from '../trend/mann-kendall.ts';
import { type TheilSen, theilSen } from '../trend/theil-sen.ts';

/** A value of one week. */
interface WeekPoint {
  readonly monday: string;
  readonly value: number;
}

/** Whether the weeks go up or down. */
export interface WeekTrend {
  readonly weeks: number;
  /** Weeks with a value that are still missing before any trend can be told from chance. */
  readonly missing: number;
  /** Per week. */
  readonly line: TheilSen | null;
  readonly test: MannKendall | null;
  /** Of what is left when the line is taken off. */
  readonly autocorrelation: number | null;
  /** Neighbouring weeks are so alike that chance alone looks like a trend more often than is said. */
  readonly isAutocorrelated: boolean;
  /** Null below the weeks it takes. */
  readonly verdict: Verdict | null;
}

/** Of four weeks in order, chance alone puts 8 in 100 into one of the two steepest orders. */
const WEEKS_FOR_TREND = 5;
/** A year: longer ago says nothing of whether it still gets better. */
const MOST_WEEKS = 52;
const WEEK_MS = 7 * 86_400_000;

/**
 * @param all weeks that have a value, in time order, the last 52 of which count; weeks without one are gaps
 * @param better which value is the better one
 */
export function weekTrend(
  all: readonly WeekPoint[],
  better: 'smaller' | 'larger' = 'smaller',
): WeekTrend {
  const points = all.slice(-MOST_WEEKS);
  const first = Date.parse(points[0]?.monday ?? '1970-01-01');
  const times = points.map(({ monday }) => (Date.parse(monday) - first) / WEEK_MS);
  const values = points.map(({ value }) => value);
  const line = theilSen(times, values);
  const test = mannKendall(values);
  const rest = line === null ? [] : values.map((value, i) => value - line.slope * times[i]!);
  const autocorrelation = lagAutocorrelation(rest);
  const isEnough = points.length >= WEEKS_FOR_TREND;
  return {
    weeks: points.length,
    missing: Math.max(0, WEEKS_FOR_TREND - points.length),
    line,
    test,
    autocorrelation,
    isAutocorrelated: (autocorrelation ?? 0) > NOTABLE_AUTOCORRELATION,
    // the interval leaves 0 out where the test of Mann and Kendall rejects: both come from the same S
    verdict: isEnough && line !== null ? slopeVerdict(line.slopeInterval, better) : null,
  };
}

function slopeVerdict({ low, high }: Interval, better: 'smaller' | 'larger'): Verdict {
  return better === 'smaller' ? verdict({ low, high }, 0) : verdict({ low: -high, high: -low }, 0);
}
