import type { Feedback } from '../drill/drill-view.ts';
import { AMOUNT_FEELS, readSelfRating, TIMING_FEELS } from '../drill/self-rating.ts';
import { NARROWEST_BANDS } from '../score/advice-bands.ts';
import type { RepOutcome } from '../score/rep-score.ts';
import { type WeightedKappa, weightedKappa } from './summary/weighted-kappa.ts';

/** What is asked of a rep to compare what was felt with what was measured. */
export interface RatedRep {
  readonly feedback: Feedback;
  /** As the history keeps it. */
  readonly selfRating: string | null;
  /** Null for a void rep. */
  readonly outcome: RepOutcome | null;
}

/** How well the driver feels what the pedal did, in one group of reps. */
export interface FeltAgreement {
  /** Rated and measured reps whose trace was not seen while they were driven. */
  readonly ratings: number;
  /** Fewest of them that say anything. */
  readonly needed: number;
  /** Early, right or late. Null under the reps needed, and where everything was in one category. */
  readonly timing: WeightedKappa | null;
  /** Light, right or heavy. */
  readonly amount: WeightedKappa | null;
}

/** Under ten judgements the interval of kappa is as wide as its range. */
const LEAST_RATINGS = 10;

/**
 * Agreement of the driver's own ratings with the measurement, beyond chance: weighted kappa with linear weights, so
 * that early for late counts double. Shown reps are left out: there the answer was on the screen.
 *
 * @param reps in any order
 */
export function feltAgreement(reps: Iterable<RatedRep>): FeltAgreement {
  const [timing, amount] = [emptyTable(), emptyTable()];
  let ratings = 0;
  for (const { feedback, selfRating, outcome } of reps) {
    const felt = readSelfRating(selfRating);
    if (felt === null || feedback === 'shown' || outcome?.kind !== 'scored') continue;
    const lateS = outcome.keyPointErrorsS.startOfRelease;
    if (lateS === null) continue;
    ratings++;
    count(timing, TIMING_FEELS.indexOf(felt.timing), category(lateS, NARROWEST_BANDS.timingS));
    count(
      amount,
      AMOUNT_FEELS.indexOf(felt.amount),
      category(outcome.peakError, NARROWEST_BANDS.amount),
    );
  }
  const enough = ratings >= LEAST_RATINGS;
  return {
    ratings,
    needed: LEAST_RATINGS,
    timing: enough ? weightedKappa(timing) : null,
    amount: enough ? weightedKappa(amount) : null,
  };
}

const emptyTable = (): number[][] => [
  [0, 0, 0],
  [0, 0, 0],
  [0, 0, 0],
];

/** Below the band, in it, above it. */
function category(value: number, band: number): 0 | 1 | 2 {
  if (Math.abs(value) <= band) return 1;
  return value < 0 ? 0 : 2;
}

function count(table: number[][], felt: number, measured: number): void {
  const row = table[felt]!;
  row[measured] = row[measured]! + 1;
}
