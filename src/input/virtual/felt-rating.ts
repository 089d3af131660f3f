import { gaussian, type RandomSource } from '../../drill/seeded-random.ts';
import { AMOUNT_FEELS, type SelfRating, TIMING_FEELS } from '../../drill/self-rating.ts';
import { NARROWEST_BANDS } from '../../score/advice-bands.ts';
import type { RepOutcome } from '../../score/rep-score.ts';

/** A moment is felt to within some tens of milliseconds; common practice, no source. */
const TIMING_NOISE_S = 0.04;
/** A force is felt to within about 7 % (Pang, Tan and Durlach, Perception & Psychophysics 49, 1991). */
const AMOUNT_NOISE = 0.07;

/** What a driver would say about a rep who feels it no better than feet do; null where there was nothing to feel. */
export function feltRating(outcome: RepOutcome | null, random: RandomSource): SelfRating | null {
  const [timing, amount] = [gaussian(random), gaussian(random)];
  if (outcome?.kind !== 'scored') return null;
  const lateS = outcome.keyPointErrorsS.startOfRelease ?? 0;
  return {
    timing: TIMING_FEELS[place(lateS + TIMING_NOISE_S * timing, NARROWEST_BANDS.timingS)],
    amount: AMOUNT_FEELS[place(outcome.peakError + AMOUNT_NOISE * amount, NARROWEST_BANDS.amount)],
  };
}

function place(value: number, band: number): 0 | 1 | 2 {
  if (Math.abs(value) <= band) return 1;
  return value < 0 ? 0 : 2;
}
