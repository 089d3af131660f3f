import { median } from '../../consistency/median.ts';
import type { DiagnosedRep } from './diagnosed-rep.ts';

/**
 * When the foot came down, in seconds after the cue; before it is negative. It is apart from the score, for which a rep
 * begins with the foot.
 */
export interface StartError {
  readonly medianS: number;
  readonly earliestS: number;
  readonly latestS: number;
  readonly reps: number;
}

/** Null without a scored rep over time; the live car has a brake point instead of a cue. */
export function startError(reps: readonly DiagnosedRep[]): StartError | null {
  const errorsS = reps.flatMap(({ outcome }) =>
    outcome?.kind === 'scored' && outcome.live == null ? (outcome.side.startErrorS ?? []) : [],
  );
  const medianS = median(errorsS);
  if (medianS === null) return null;
  return {
    medianS,
    earliestS: Math.min(...errorsS),
    latestS: Math.max(...errorsS),
    reps: errorsS.length,
  };
}
