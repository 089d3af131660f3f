import type { Felt, FeltRep } from '../change/felt-agreement.ts';
import type { RepMeasure } from '../rep-measure.ts';
import { averageError, startError } from './practices.ts';

/** The words a rating is kept as; where both were asked, with a comma and a space between. */
export const FELT_TIMING = { early: -1, 'on time': 0, late: 1 } as const;
export const FELT_AMOUNT = { light: -1, right: 0, heavy: 1 } as const;

/** Reps whose start of release was rated, with the error that was measured in seconds. */
export function ratedTiming(reps: readonly RepMeasure[]): FeltRep[] {
  return rated(reps, FELT_TIMING, startError);
}

/** Reps whose amount was rated, with the average error that was measured, 0..1 of full scale. */
export function ratedAmount(reps: readonly RepMeasure[]): FeltRep[] {
  return rated(reps, FELT_AMOUNT, averageError);
}

function rated(
  reps: readonly RepMeasure[],
  words: Readonly<Record<string, Felt>>,
  number: typeof startError,
): FeltRep[] {
  return reps.flatMap(({ selfRating, numbers }) => {
    const said = selfRating?.split(', ').find((word) => Object.hasOwn(words, word));
    const felt = said === undefined ? undefined : words[said];
    const measured = numbers === null ? null : number(numbers);
    return felt === undefined || measured === null ? [] : [{ felt, measured }];
  });
}
