import type { SpreadChange } from '../change/spread-change.ts';
import type { FeltAgreement } from '../felt-agreement.ts';
import type { PracticeCurve } from '../fit/practice-curve.ts';
import type { Interval } from '../interval.ts';
import { isoWeek } from '../iso-week.ts';
import { chartReading } from './chart-reading.ts';
import { dayJson, snakeCase } from './day-json.ts';
import type { FeltTrend } from './felt-trend.ts';
import { headline, hiddenTrendSentence, trendSentence } from './headline.ts';
import { CHART_RULES, type PracticeChart } from './practice-chart.ts';
import type { WeekErrors, WeekRow } from './week-rows.ts';
import type { WeekTrend } from './week-trend.ts';
import type { WeeksProgress } from './weeks-progress.ts';

type Json = Readonly<Record<string, unknown>>;

/** The progress as plain data, units in the names, levels 0..1 of full scale; null where there are too few reps. */
export function weeksJson(all: readonly WeeksProgress[]): { readonly targets: readonly Json[] } {
  return { targets: all.map(seriesJson) };
}

function seriesJson(progress: WeeksProgress): Json {
  const { spread, worthwhile, repeatability } = progress;
  return {
    driver: progress.driver,
    target_id: progress.targetId,
    source: progress.source,
    foot: progress.foot,
    condition: progress.condition,
    sentence: headline(progress),
    trend_sentence: trendSentence(progress),
    hidden_trend_sentence: hiddenTrendSentence(progress),
    comparable_since: progress.since,
    spread_change: {
      now_from: spread.nowFrom,
      now_to: spread.nowTo,
      before_from: spread.beforeFrom,
      before_to: spread.beforeTo,
      broken_on: spread.brokenOn,
      average_error: changeJson(spread.amount, 'level'),
      start_of_release: changeJson(spread.timing, 's'),
    },
    first_of_day_trend: trendJson(progress.firstOfDayTrend, 'level'),
    hidden_trend: trendJson(progress.hiddenTrend, 'level'),
    typical_error_level: progress.typicalErrorLevel,
    typical_error_interval_level: intervalJson(progress.typicalErrorInterval),
    smallest_worthwhile_change_level: worthwhile?.smallest ?? null,
    clear_change_level: worthwhile?.clear ?? null,
    repeatability_level: repeatability?.within ?? null,
    between_practices_level: repeatability?.between ?? null,
    reproducibility_level: repeatability?.reproducibility ?? null,
    ...feltJson(progress.felt),
    practice_curve: progress.curve === null ? null : curveJson(progress.curve),
    control_chart: chartJson(progress.chart),
    weeks: progress.weeks.map(weekJson),
    days: progress.days.map(dayJson),
  };
}

/** Agreement from -1 to 1: 1 is always, 0 is chance. */
function feltJson({ all, weeks, timing, amount }: FeltTrend): Json {
  return {
    ...agreementJson(all, 'felt_'),
    felt_rated_reps: all.ratings,
    felt_missing_reps: Math.max(0, all.needed - all.ratings),
    felt_timing_trend: trendJson(timing, 'agreement'),
    felt_amount_trend: trendJson(amount, 'agreement'),
    felt_weeks: weeks.map((week) => ({
      iso_week: isoWeek(week.monday),
      rated_reps: week.ratings,
      ...agreementJson(week, ''),
    })),
  };
}

function agreementJson({ timing, amount }: FeltAgreement, before: 'felt_' | ''): Json {
  return {
    [`${before}timing_agreement`]: timing?.kappa ?? null,
    [`${before}timing_agreement_interval`]: intervalJson(timing?.interval ?? null),
    [`${before}amount_agreement`]: amount?.kappa ?? null,
    [`${before}amount_agreement_interval`]: intervalJson(amount?.interval ?? null),
  };
}

function changeJson(
  { before, now, ratio, ratioInterval, verdict, hangsOnOne }: SpreadChange,
  unit: string,
): Json {
  return {
    verdict,
    hangs_on_one_practice: hangsOnOne,
    [`before_spread_${unit}`]: before.deviation,
    [`before_interval_${unit}`]: intervalJson(before.interval),
    before_reps: before.reps,
    before_missing_reps: before.missing,
    [`now_spread_${unit}`]: now.deviation,
    [`now_interval_${unit}`]: intervalJson(now.interval),
    now_reps: now.reps,
    now_missing_reps: now.missing,
    ratio,
    ratio_interval: intervalJson(ratioInterval),
  };
}

/** The ends, and how often such an interval holds the true value. */
function intervalJson(interval: Interval | null): Json | null {
  if (interval === null) return null;
  return { low: interval.low, high: interval.high, attained_share: interval.level };
}

function trendJson(trend: WeekTrend, unit: 'level' | 'agreement'): Json {
  return {
    verdict: trend.verdict,
    weeks: trend.weeks,
    missing_weeks: trend.missing,
    [`slope_${unit}_per_week`]: trend.line?.slope ?? null,
    [`slope_interval_${unit}_per_week`]: intervalJson(trend.line?.slopeInterval ?? null),
    mann_kendall_statistic: trend.test?.s ?? null,
    mann_kendall_chance: trend.test?.chance ?? null,
    mann_kendall_method: trend.test?.method ?? null,
    autocorrelation: trend.autocorrelation,
    is_autocorrelated: trend.isAutocorrelated,
  };
}

function curveJson({ points, fits, chosen, plateau, missingForPlateau }: PracticeCurve): Json {
  return {
    practices: points,
    chosen: chosen?.family ?? null,
    plateau_level: plateau,
    plateau_standard_error_level: plateau === null ? null : (chosen?.plateauError ?? null),
    missing_practices_for_plateau: missingForPlateau,
    // plateaus of the fits are left out: they are shown when they may be
    fits: fits.map(({ family, rate, information }) => ({
      family,
      rate_per_practice: family === 'exponential' ? rate : null,
      exponent: family === 'power' ? rate : null,
      corrected_information: information,
    })),
  };
}

function chartJson(chart: PracticeChart): Json {
  return {
    reading: chartReading(chart),
    centre_level: chart.limits?.centreLevel ?? null,
    upper_level: chart.limits?.upperLevel ?? null,
    lower_level: chart.limits?.lowerLevel ?? null,
    moving_range_upper_factor: chart.limits?.movingRangeUpperFactor ?? null,
    weighted_mean_weight: CHART_RULES.weightedMean.weight,
    weighted_mean_reach_deviations: CHART_RULES.weightedMean.reach,
    sum_slack_deviations: CHART_RULES.sums.slack,
    sum_limit_deviations: CHART_RULES.sums.limit,
    missing_practices: chart.missingPractices,
    autocorrelation: chart.autocorrelation,
    is_autocorrelated: chart.isAutocorrelated,
    points: chart.points.map((point) => ({
      practice_id: point.practiceId,
      day: point.day,
      hidden_reps: point.reps,
      median_release_error_level: point.level,
      is_baseline: point.isBaseline,
      moving_range_factor: point.movingRangeFactor,
      is_range_outside: point.isRangeOutside,
      signal: point.signal,
      weighted_mean_level: point.weighted?.value ?? null,
      weighted_upper_level: point.weighted?.upper ?? null,
      weighted_lower_level: point.weighted?.lower ?? null,
      sum_above_deviations: point.sums?.high ?? null,
      sum_below_deviations: point.sums?.low ?? null,
      sum_signal: point.sums?.signal ?? null,
    })),
  };
}

function weekJson(row: WeekRow): Json {
  return {
    iso_week: row.week,
    monday: row.monday,
    changed: row.changed.map(snakeCase),
    reps: row.reps,
    practices: row.practices,
    ...errorsJson('hidden', row.hidden),
    ...errorsJson('first_of_day', row.firstOfDay),
    hidden_spread_level: row.spreadLevel.value,
  };
}

function errorsJson(name: string, { medianReleaseErrorLevel, interval }: WeekErrors): Json {
  return {
    [`${name}_reps`]: medianReleaseErrorLevel.reps,
    [`${name}_median_release_error_level`]: medianReleaseErrorLevel.value,
    [`${name}_median_interval_level`]: intervalJson(interval),
  };
}
