import { type Estimate, estimate } from '../estimate.ts';
import { weightedKappa } from '../summary/weighted-kappa.ts';

/** Too early or light, right, too late or heavy. */
export type Felt = -1 | 0 | 1;

/** What the driver felt before the score was shown, and the signed error that was measured. */
export interface FeltRep {
  readonly felt: Felt;
  readonly measured: number;
}

/** Fewer rated reps leave some of the nine cells empty by chance (common practice, no source). */
export const REPS_FOR_AGREEMENT = 20;

/**
 * Agreement of felt and measured errors as Cohen's kappa with linear weights: early for late is twice as wrong as
 * early for right.
 *
 * @param band errors up to this, either way, count as right
 */
export function feltAgreement(reps: readonly FeltRep[], band: number): Estimate {
  const table = [-1, 0, 1].map((felt) =>
    [-1, 0, 1].map(
      (side) =>
        reps.filter((rep) => rep.felt === felt && sideOf(rep.measured, band) === side).length,
    ),
  );
  return estimate(
    reps.map(({ measured }) => measured),
    REPS_FOR_AGREEMENT,
    () => weightedKappa(table)?.kappa ?? null,
  );
}

function sideOf(measured: number, band: number): Felt {
  if (Math.abs(measured) <= band) return 0;
  return measured < 0 ? -1 : 1;
}
