import { addDays } from '../../src/consistency/iso-week.ts';
import type { RepMeasure } from '../../src/consistency/rep-measure.ts';
import { gaussian, type RandomSource } from '../../src/drill/seeded-random.ts';
import { aMeasure, someNumbers, times } from './rep-measures.ts';

/** What an invented driver does in a practice. */
export interface InventedPractice {
  readonly id: number;
  readonly day: string;
  readonly random: RandomSource;
  /** Standard deviation of the average error from rep to rep. */
  readonly spreadLevel: number;
  /** Median release error. */
  readonly errorLevel: number;
  readonly hidden?: number;
  readonly more?: Partial<RepMeasure>;
}

export interface InventedOptions {
  readonly today?: string;
  readonly factor?: number;
  readonly missed?: readonly number[];
}

/** Five first-of-day reps, then as many shown as hidden ones. */
export function inventedPractice(practice: InventedPractice): RepMeasure[] {
  const { id, day, random, spreadLevel, errorLevel, hidden = 12, more = {} } = practice;
  const shift = 0.01 * gaussian(random);
  const rep = (feedback: RepMeasure['feedback'], worse: number): RepMeasure =>
    aMeasure({
      practiceId: id,
      day,
      feedback,
      numbers: someNumbers({
        averageErrorLevel: shift + spreadLevel * gaussian(random),
        releaseErrorLevel: worse * errorLevel * Math.exp(0.3 * gaussian(random)),
        startOfReleaseErrorS: 0.5 * spreadLevel * gaussian(random),
      }),
      ...more,
    });
  return [
    ...times(5, () => rep('first-of-day', 1.3)),
    ...times(hidden, () => [rep('shown', 0.9), rep('hidden', 1)]).flat(),
  ];
}

/**
 * Three practices a week for so many weeks up to a day, spread and error falling from first to last by a factor; the
 * weeks named are left out.
 */
export function inventedWeeks(
  weeks: number,
  random: RandomSource,
  { today = '2026-11-25', factor = 1, missed = [] }: InventedOptions = {},
): RepMeasure[] {
  return times(weeks, (week) =>
    missed.includes(week)
      ? []
      : times(3, (place) => {
          const share = weeks < 2 ? 0 : week / (weeks - 1);
          return inventedPractice({
            id: 3 * week + place + 1,
            day: addDays(today, 7 * (week - weeks + 1) - 2 + place),
            random,
            spreadLevel: 0.04 * factor ** share,
            errorLevel: 0.05 * factor ** share,
          });
        }).flat(),
  ).flat();
}
