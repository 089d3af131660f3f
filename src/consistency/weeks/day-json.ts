import type { PracticeDay } from '../practice-day.ts';

/** One day as plain data, units in the names, levels 0..1; null where there are too few reps. */
export function dayJson(day: PracticeDay): Record<string, unknown> {
  return {
    day: day.day,
    iso_week: day.week,
    zone: day.zone,
    target_version: day.conditions.targetVersion,
    score_version: day.conditions.scoreVersion,
    source: day.conditions.source,
    sensor: day.conditions.sensor,
    calibration_id: day.conditions.calibrationId,
    foot: day.conditions.foot,
    footwear: day.conditions.footwear,
    condition: day.conditions.condition,
    changed: day.changed.map(snakeCase),
    reps: day.reps,
    shown_reps: day.shown,
    hidden_reps: day.hidden,
    first_of_day_reps: day.firstOfDay,
    warm_up_reps: day.warmUp,
    aborted_reps: day.aborted,
    device_lost_reps: day.deviceLost,
    scored_reps: day.medianScore.reps,
    measured_reps: day.measured,
    median_score: day.medianScore.value,
    median_release_error_level: day.medianReleaseErrorLevel.value,
    average_error_level: day.averageErrorLevel.value,
    average_error_spread_level: day.amountSpreadLevel.value,
    start_of_release_spread_s: day.timingSpreadS.value,
    reapplications_per_rep: day.reapplicationsPerRep,
  };
}

/** Names of fields as JSON has them. */
export function snakeCase(name: string): string {
  return name.replace(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`);
}
