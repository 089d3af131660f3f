import { AMOUNT_FEELS, readSelfRating, TIMING_FEELS } from '../../drill/self-rating.ts';
import type { Felt, FeltRep } from '../change/felt-agreement.ts';
import type { RepMeasure } from '../rep-measure.ts';
import { averageError, startError } from './practices.ts';

/** Rated reps with the error of the start of release that was measured, in seconds. */
export function ratedTiming(reps: readonly RepMeasure[]): FeltRep[] {
  return rated(reps, startError, ({ timing }) => TIMING_FEELS.indexOf(timing));
}

/** Rated reps with the average error that was measured, 0..1 of full scale. */
export function ratedAmount(reps: readonly RepMeasure[]): FeltRep[] {
  return rated(reps, averageError, ({ amount }) => AMOUNT_FEELS.indexOf(amount));
}

/** Shown reps are left out: there the answer was on the screen. */
function rated(
  reps: readonly RepMeasure[],
  number: typeof startError,
  placeOf: (rating: NonNullable<ReturnType<typeof readSelfRating>>) => number,
): FeltRep[] {
  const all: FeltRep[] = [];
  for (const { selfRating, numbers, feedback } of reps) {
    // nearly all of years of reps have none
    if (selfRating === null || numbers === null || feedback === 'shown') continue;
    const [rating, measured] = [readSelfRating(selfRating), number(numbers)];
    if (rating === null || measured === null) continue;
    all.push({ felt: (placeOf(rating) - 1) as Felt, measured });
  }
  return all;
}
