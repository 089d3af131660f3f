/** How the driver felt a rep before its result was shown. */
export interface SelfRating {
  readonly timing: TimingFeel;
  readonly amount: AmountFeel;
}

/** From too small to too large, as the keys 1, 2 and 3 stand. */
export const TIMING_FEELS = ['early', 'right', 'late'] as const;
export const AMOUNT_FEELS = ['light', 'right', 'heavy'] as const;
type TimingFeel = (typeof TIMING_FEELS)[number];
type AmountFeel = (typeof AMOUNT_FEELS)[number];

/** A rating that is being given: null for what was not said yet. */
export interface RatingUnderWay {
  readonly timing: TimingFeel | null;
  readonly amount: AmountFeel | null;
}

export const NOT_RATED: RatingUnderWay = { timing: null, amount: null };

/** Which of the three keys was pressed. */
export type RatingKey = 'low' | 'middle' | 'high';
const PLACES: Readonly<Record<RatingKey, 0 | 1 | 2>> = { low: 0, middle: 1, high: 2 };

/** The rating after one more key; timing is asked first. */
export function rated(rating: RatingUnderWay, key: RatingKey): RatingUnderWay {
  const place = PLACES[key];
  if (rating.timing === null) return { ...rating, timing: TIMING_FEELS[place] };
  return rating.amount === null ? { ...rating, amount: AMOUNT_FEELS[place] } : rating;
}

/** The rating once it is whole, else null. */
export function wholeRating({ timing, amount }: RatingUnderWay): SelfRating | null {
  return timing === null || amount === null ? null : { timing, amount };
}

/** As the history keeps it, for example `late heavy`. */
export function selfRatingText({ timing, amount }: SelfRating): string {
  return `${timing} ${amount}`;
}

/** Reads what the history kept; null for anything else. */
export function readSelfRating(text: string | null): SelfRating | null {
  const [first, second, ...more] = (text ?? '').split(' ');
  const timing = TIMING_FEELS.find((feel) => feel === first);
  const amount = AMOUNT_FEELS.find((feel) => feel === second);
  return timing === undefined || amount === undefined || more.length > 0
    ? null
    : { timing, amount };
}
