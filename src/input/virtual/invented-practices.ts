import { instantAt } from '../../consistency/instant-at.ts';
import { addDays, mondayOf } from '../../consistency/iso-week.ts';
import type { ZonedInstant } from '../../consistency/zoned-instant.ts';
import { type RandomSource, seededRandom } from '../../drill/seeded-random.ts';
import type { PedalBits } from './virtual-devices.ts';

/** What is driven: blocks of the usual target, of another one, a corner with the live car, or a plan's practice. */
export type InventedKind = 'usual' | 'other target' | 'live car' | 'plan';

/** One practice of an invented history. */
export interface InventedPractice {
  readonly kind: InventedKind;
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
  /** First week on the new pedals, those of a virtual drill today; null under four weeks. */
  readonly pedalWeek: number | null;
}

const PER_WEEK = 3;
/** Monday to Saturday. */
const WEEKDAYS = 6;
/** On the wall, from 18:00 to 20:59. */
const FIRST_MINUTE = 18 * 60;
const MINUTES = 3 * 60;
/** Between the practices of an evening. */
const LATER_MINUTES = 25;

/**
 * Three practices a week on different days, in the evening by the clock on the wall, new pedals after three tenths and
 * one week left out later on: spaced practice is what the literature advises, the rest is invented. Asked for more, the
 * last evening of each week goes on with another target, and then with the live car and a plan in turn. The same seed
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
  mixed: boolean = false,
): InventedCalendar {
  const random = seededRandom(seed, 21);
  const pedalWeek = weeks < 4 ? null : Math.ceil(0.3 * weeks);
  const missedWeek = weeks < 5 ? null : missed(weeks, random);
  const monday = mondayOf(from);
  const practices = Array.from({ length: weeks }, (_, week) => {
    const days = practiceDays(random);
    return days.flatMap((day, i): InventedPractice[] => {
      const minutes = FIRST_MINUTE + Math.floor(MINUTES * random());
      const seedOfDay = Math.floor(2 ** 31 * random());
      const kinds = mixed && i === days.length - 1 ? kindsOfLastDay(week) : USUAL;
      return kinds.map((kind, place) => ({
        kind,
        startedAt: instantAt(
          addDays(monday, 7 * week + day),
          minutes + place * LATER_MINUTES,
          zone,
        ),
        week,
        pedals: pedalWeek !== null && week < pedalWeek ? 12 : 16,
        seed: (seedOfDay + place) % 2 ** 31,
      }));
    });
  });
  return {
    practices: practices.flat().filter(({ week }) => week !== missedWeek),
    missedWeek,
    pedalWeek,
  };
}

const USUAL: readonly InventedKind[] = ['usual'];

function kindsOfLastDay(week: number): readonly InventedKind[] {
  return ['usual', 'other target', week % 2 === 0 ? 'live car' : 'plan'];
}

/** Late enough that there are weeks on the new pedals before it, early enough that the last ones are whole. */
function missed(weeks: number, random: RandomSource): number {
  return weeks < 8 ? weeks - 2 : weeks - 3 - Math.floor(2 * random());
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
