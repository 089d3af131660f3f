/** A number from several reps, or null with how many it would take. */
export interface Estimate {
  readonly value: number | null;
  /** Reps it is made of. */
  readonly reps: number;
  /** Fewest reps that say anything. */
  readonly needed: number;
}

/**
 * A single rep's score is noisy: 5 reps of one driver give a mean known to 1.2 standard deviations, 8 to 0.8, 10 to
 * 0.7 (95 %, Student's t).
 */
export const REPS_FOR_MEDIAN = 8;

/** The deviation of 8 reps is known within a factor of 2.0 upwards, that of 10 within 1.8 (95 %, chi-square). */
export const REPS_FOR_SPREAD = 10;

/** Applies a statistic if there are values enough. */
export function estimate(
  values: readonly number[],
  needed: number,
  statistic: (values: readonly number[]) => number | null,
): Estimate {
  const value = values.length < needed ? null : statistic(values);
  return { value, reps: values.length, needed };
}

/** An estimate in words of the caller, or how many of the reps needed there are. */
export function estimateText(
  { value, reps, needed }: Estimate,
  text: (value: number) => string,
): string {
  return value === null ? `${reps} of ${needed}` : text(value);
}
