import type { ComparedDriver, DriverComparison } from './compare-drivers.ts';

/** Drivers compared, as `progress --all --json` prints them. */
export function comparisonJson(all: readonly DriverComparison[]): object {
  return {
    targets: all.map(({ targetId, targetVersion, scoreVersion, drivers, mixed }) => ({
      target_id: targetId,
      target_version: targetVersion,
      score_version: scoreVersion,
      mixed_conditions: mixed.map(({ name, values }) => ({ name, values })),
      drivers: drivers.map(driverJson),
    })),
  };
}

function driverJson(compared: ComparedDriver): object {
  const { progress, conditions, trend } = compared;
  const { before, now, ratio, verdict } = progress.spread.amount;
  return {
    driver: progress.driver,
    source: progress.source,
    foot: progress.foot,
    condition: progress.condition,
    sensor: conditions?.sensor ?? null,
    since: compared.since,
    hidden_rep_count: compared.hiddenReps,
    typical_error_level: progress.typicalErrorLevel,
    typical_error_interval_level: intervalJson(progress.typicalErrorInterval),
    typical_error_missing_rep_count: compared.typicalErrorMissingReps,
    trend_of: compared.trendOf,
    trend_verdict: trend.verdict,
    trend_level_per_week: trend.line?.slope ?? null,
    trend_interval_level_per_week: intervalJson(trend.line?.slopeInterval ?? null),
    trend_week_count: trend.weeks,
    trend_missing_rep_count: compared.trendMissingReps,
    spread_verdict: verdict,
    spread_before_level: before.deviation,
    spread_now_level: now.deviation,
    spread_ratio: ratio,
    spread_missing_rep_count: compared.spreadMissingReps,
  };
}

function intervalJson(
  interval: { readonly low: number; readonly high: number; readonly level: number } | null,
): object | null {
  return interval === null
    ? null
    : { low: interval.low, high: interval.high, attained_share: interval.level };
}
