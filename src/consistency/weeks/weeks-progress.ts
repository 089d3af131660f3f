import { type WorthwhileChange, worthwhileChange } from '../change/worthwhile-change.ts';
import { REPS_FOR_MEDIAN, REPS_FOR_SPREAD } from '../estimate.ts';
import { type PracticeCurve, practiceCurve } from '../fit/practice-curve.ts';
import type { Interval } from '../interval.ts';
import { addDays, mondayOf } from '../iso-week.ts';
import { median } from '../median.ts';
import type { PracticeDay } from '../practice-day.ts';
import { practiceDays } from '../practice-days.ts';
import { type Reps, repsWhere, sharedOf } from '../rep-columns.ts';
import { type Repeatability, repeatability } from '../variation/repeatability.ts';
import { typicalError, typicalErrorInterval } from '../variation/typical-error.ts';
import { type FeltTrend, feltTrend } from './felt-trend.ts';
import { type PeriodChange, periodChange } from './period-change.ts';
import { type PracticeChart, type PracticeMedian, practiceChart } from './practice-chart.ts';
import type { PracticeValues } from './practice-values.ts';
import { type Segment, segmentsOf } from './segments.ts';
import { type Series, seriesOf } from './series.ts';
import { type WeekRow, weekRows } from './week-rows.ts';
import { type WeekTrend, weekTrend } from './week-trend.ts';

/** What the weeks say of one series. All but the rows is of the reps since the last break in comparability. */
export interface WeeksProgress extends Omit<Series, 'reps'> {
  /** Day of the first rep since the last break. */
  readonly since: string;
  readonly weeks: readonly WeekRow[];
  /** Only the weeks that are shown. */
  readonly days: readonly PracticeDay[];
  /** Spread of hidden reps now against four weeks ago. */
  readonly spread: PeriodChange;
  /** Of the week medians of the release error. */
  readonly firstOfDayTrend: WeekTrend;
  readonly hiddenTrend: WeekTrend;
  /** Of practice medians of hidden reps. */
  readonly chart: PracticeChart;
  readonly curve: PracticeCurve | null;
  /** How far a practice median strays without any change; null under three practices. */
  readonly typicalErrorLevel: number | null;
  readonly typicalErrorInterval: Interval | null;
  readonly worthwhile: WorthwhileChange | null;
  /** Of the average error of hidden reps, practices as the groups. */
  readonly repeatability: Repeatability | null;
  readonly felt: FeltTrend;
  /** The last practice with ten hidden reps or more; null where there is none. */
  readonly latest: PracticeValues | null;
}

/** How weeks are looked at. */
export interface WeeksOptions {
  /** The reader's local date. */
  readonly today: string;
  /** Show only the last so many weeks, this one included; statistics are of all reps either way. Null shows all. */
  readonly weeks: number | null;
}

const MOST_CURVE_POINTS = 200;

/**
 * Turns reps into what is known of a driver's consistency over weeks: one entry for each driver, target, source, foot
 * and condition. Series without a rep in the weeks that are shown are left out.
 *
 * @param reps oldest first
 */
export function weeksProgress(reps: Reps, { today, weeks }: WeeksOptions): WeeksProgress[] {
  const from = weeks === null ? '' : addDays(mondayOf(today), -7 * (weeks - 1));
  return seriesOf(reps)
    .filter((series) => lastDay(series.reps) >= from)
    .map((series) => progressOf(series, today, from));
}

function lastDay(reps: Reps): string {
  return sharedOf(reps, reps.places.length - 1).day;
}

function progressOf({ reps, ...series }: Series, today: string, from: string): WeeksProgress {
  const segments = segmentsOf(reps);
  const rows = weekRows(segments, today);
  const newest = segments.at(-1)!;
  const own = rows.slice(rows.findLastIndex(({ changed }) => changed.length > 0));
  const sinceBreak = segments.length > 1 ? own : rows;
  const shown = from === '' ? reps : repsWhere(reps, ({ day }) => day >= from);
  return {
    ...series,
    since: sharedOf(newest.reps, 0).day,
    weeks: rows.filter(({ monday }) => addDays(monday, 6) >= from),
    days: practiceDays(shown),
    spread: periodChange(segments, today),
    firstOfDayTrend: trendOf(sinceBreak, 'firstOfDay'),
    hiddenTrend: trendOf(sinceBreak, 'hidden'),
    ...practiceStatistics(newest),
    felt: feltTrend(newest.reps),
  };
}

function trendOf(rows: readonly WeekRow[], kind: 'firstOfDay' | 'hidden'): WeekTrend {
  return weekTrend(
    rows.flatMap((row) => {
      const { value } = row[kind].medianReleaseErrorLevel;
      return value === null ? [] : [{ monday: row.monday, value }];
    }),
  );
}

function practiceStatistics({
  practices,
}: Segment): Pick<
  WeeksProgress,
  | 'chart'
  | 'curve'
  | 'typicalErrorLevel'
  | 'typicalErrorInterval'
  | 'worthwhile'
  | 'repeatability'
  | 'latest'
> {
  const medians = practiceMedians(practices);
  const levels = medians.map(({ level }) => level);
  const error = typicalError(levels);
  return {
    chart: practiceChart(medians),
    curve: curveOf(levels),
    typicalErrorLevel: error,
    typicalErrorInterval: typicalErrorInterval(levels),
    worthwhile: error === null ? null : worthwhileChange(error),
    repeatability: repeatability(practices.map(({ hidden }) => hidden.averageErrorLevel)),
    latest:
      practices.findLast(({ hidden }) => hidden.releaseErrorLevel.length >= REPS_FOR_SPREAD) ??
      null,
  };
}

/** Above the most points, neighbours are taken together by their median: the shape over years does not need each. */
function curveOf(levels: readonly number[]): PracticeCurve | null {
  const together = Math.ceil(levels.length / MOST_CURVE_POINTS);
  const starts = levels.flatMap((_, i) => (i % together === 0 ? [i] : []));
  return practiceCurve(
    starts.map((start) => start + (Math.min(together, levels.length - start) + 1) / 2),
    starts.map((start) => median(levels.slice(start, start + together))!),
  );
}

function practiceMedians(practices: readonly PracticeValues[]): PracticeMedian[] {
  return practices.flatMap(({ practiceId, day, hidden: { releaseErrorLevel } }) => {
    const reps = releaseErrorLevel.length;
    const level = reps < REPS_FOR_MEDIAN ? 0 : median(releaseErrorLevel)!;
    return level > 0 ? [{ practiceId, day, reps, level }] : [];
  });
}
