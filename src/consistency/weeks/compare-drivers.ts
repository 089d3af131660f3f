import { REPS_FOR_MEDIAN } from '../estimate.ts';
import type { Conditions } from '../rep-measure.ts';
import { REPS_FOR_WEEK } from './week-rows.ts';
import type { WeekTrend } from './week-trend.ts';
import type { WeeksProgress } from './weeks-progress.ts';

/** A typical error takes differences of neighbours, so three practices. */
const PRACTICES_FOR_TYPICAL_ERROR = 3;

/** One driver on one target under one condition: numbers of this driver's reps alone. */
export interface ComparedDriver {
  readonly progress: WeeksProgress;
  /** Of the newest rep; null where none ran to its end. */
  readonly conditions: Conditions | null;
  /** First day of `hiddenReps`: after the last break, and in the weeks that are shown. */
  readonly since: string;
  readonly hiddenReps: number;
  /** First-of-day reps where they say anything, else hidden ones, as in the driver's own progress. */
  readonly trendOf: 'first-of-day' | 'hidden';
  readonly trend: WeekTrend;
  /** Fewest hidden reps before there is a typical error; 0 where there is one. */
  readonly typicalErrorMissingReps: number;
  /** Fewest reps before the trend has a verdict. */
  readonly trendMissingReps: number;
  /** Hidden reps that the comparison of spreads lacks on its two sides. */
  readonly spreadMissingReps: number;
}

/** Drivers on one version of a target, scored by one version: only these compare. */
export interface DriverComparison {
  readonly targetId: string;
  readonly targetVersion: string | null;
  readonly scoreVersion: number | null;
  /** By name, then as the series came. */
  readonly drivers: readonly ComparedDriver[];
  /** Conditions in which they differ; where there are any, sizes compare worse than trends do. */
  readonly mixed: readonly MixedCondition[];
}

export interface MixedCondition {
  readonly name: (typeof MIXABLE)[number];
  readonly values: readonly (string | null)[];
}

const MIXABLE = ['source', 'sensor', 'foot', 'condition'] as const;

/**
 * Puts drivers beside each other, target by target. Nothing is computed over the reps of two drivers, and no score is
 * compared: each number is that of one driver's own progress.
 */
export function compareDrivers(all: readonly WeeksProgress[]): DriverComparison[] {
  const groups = new Map<string, ComparedDriver[]>();
  for (const progress of all) {
    const driver = comparedDriver(progress);
    const { targetVersion, scoreVersion } = driver.conditions ?? {};
    const key = JSON.stringify([progress.targetId, targetVersion, scoreVersion]);
    groups.set(key, [...(groups.get(key) ?? []), driver]);
  }
  return [...groups.values()].map(comparisonOf).toSorted(byTarget);
}

function comparisonOf(drivers: readonly ComparedDriver[]): DriverComparison {
  const [{ progress, conditions }] = drivers as readonly [ComparedDriver];
  return {
    targetId: progress.targetId,
    targetVersion: conditions?.targetVersion ?? null,
    scoreVersion: conditions?.scoreVersion ?? null,
    drivers: drivers.toSorted((a, b) => compareTexts(a.progress.driver, b.progress.driver)),
    mixed: MIXABLE.flatMap((name) => mixedIn(name, drivers)),
  };
}

function mixedIn(
  name: MixedCondition['name'],
  drivers: readonly ComparedDriver[],
): MixedCondition[] {
  const values = new Set(
    drivers.flatMap(({ conditions }) => (conditions === null ? [] : [conditions[name]])),
  );
  return values.size > 1 ? [{ name, values: [...values] }] : [];
}

function comparedDriver(progress: WeeksProgress): ComparedDriver {
  const rows = progress.weeks;
  const sinceBreak = rows.slice(
    Math.max(
      0,
      rows.findLastIndex(({ changed }) => changed.length > 0),
    ),
  );
  const { firstOfDayTrend, hiddenTrend } = progress;
  const trendOf =
    firstOfDayTrend.verdict !== null || hiddenTrend.verdict === null ? 'first-of-day' : 'hidden';
  const trend = trendOf === 'hidden' ? hiddenTrend : firstOfDayTrend;
  const practices = progress.chart.points.length;
  const missing =
    progress.typicalErrorLevel === null ? Math.max(1, PRACTICES_FOR_TYPICAL_ERROR - practices) : 0;
  const { before, now } = progress.spread.amount;
  return {
    progress,
    conditions: rows.findLast((row) => row.conditions !== null)?.conditions ?? null,
    since: later(
      progress.since,
      sinceBreak[0]?.changedOn ?? sinceBreak[0]?.monday ?? progress.since,
    ),
    hiddenReps: sinceBreak.reduce((sum, row) => sum + row.hidden.medianReleaseErrorLevel.reps, 0),
    trendOf,
    trend,
    typicalErrorMissingReps: missing * REPS_FOR_MEDIAN,
    trendMissingReps: trend.verdict === null ? Math.max(1, trend.missing) * REPS_FOR_WEEK : 0,
    spreadMissingReps: before.missing + now.missing,
  };
}

function later(one: string, other: string): string {
  return one > other ? one : other;
}

function byTarget(a: DriverComparison, b: DriverComparison): number {
  return (
    compareTexts(a.targetId, b.targetId) ||
    compareTexts(a.targetVersion ?? '', b.targetVersion ?? '')
  );
}

function compareTexts(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
