import { instantAt } from '../../consistency/instant-at.ts';
import { addDays, mondayOf } from '../../consistency/iso-week.ts';
import type { ZonedInstant } from '../../consistency/zoned-instant.ts';
import { type RandomSource, seededRandom } from '../../drill/seeded-random.ts';
import type { PedalBits } from './virtual-devices.ts';

/** One practice of an invented history. */
export interface InventedPractice {
  readonly startedAt: ZonedInstant;
  /** From 0. */
  readonly week: number;
  /** Other pedals are other devices with another calibration. */
  readonly pedals: PedalBits;
  /** Of everything that the driver does in it. */
  readonly seed: number;
}

/** When somebody practised who does so for some weeks, with a life beside it. */
export interface InventedCalendar {
  readonly practices: readonly InventedPractice[];
  /** Week without a practice, from 0; null under five weeks. */
  readonly missedWeek: number | null;
  /** First week on the new pedals; null under four weeks. */
  readonly pedalWeek: number | null;
}

const PER_WEEK = 3;
/** Monday to Saturday. */
const WEEKDAYS = 6;
/** On the wall, from 18:00 to 20:59. */
const FIRST_MINUTE = 18 * 60;
const MINUTES = 3 * 60;

/**
 * Three practices a week on different days, in the evening by the clock on the wall, one week left out in the middle
 * and new pedals after two thirds: spaced practice is what the literature advises, the rest is invented. The same seed
 * gives the same calendar.
 *
 * @param from a day of the first week, for example `2026-02-02`
 * @param zone IANA zone
 */
export function inventedCalendar(
  weeks: number,
  seed: number,
  from: string,
  zone: string,
): InventedCalendar {
  const random = seededRandom(seed, 21);
  const pedalWeek = weeks < 4 ? null : Math.ceil((2 / 3) * weeks);
  const missedWeek = weeks < 5 ? null : 1 + Math.floor(random() * (pedalWeek! - 2));
  const monday = mondayOf(from);
  const practices = Array.from({ length: weeks }, (_, week) =>
    practiceDays(random).map((day): InventedPractice => {
      const minutes = FIRST_MINUTE + Math.floor(MINUTES * random());
      return {
        startedAt: instantAt(addDays(monday, 7 * week + day), minutes, zone),
        week,
        pedals: pedalWeek !== null && week >= pedalWeek ? 12 : 16,
        seed: Math.floor(2 ** 31 * random()),
      };
    }),
  );
  return {
    practices: practices.flat().filter(({ week }) => week !== missedWeek),
    missedWeek,
    pedalWeek,
  };
}

/** Different days of a week, from 0 for Monday, in order. */
function practiceDays(random: RandomSource): number[] {
  const left = Array.from({ length: WEEKDAYS }, (_, day) => day);
  const days = Array.from(
    { length: PER_WEEK },
    () => left.splice(Math.floor(random() * left.length), 1)[0]!,
  );
  return days.sort((a, b) => a - b);
}
