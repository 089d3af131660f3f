import { median } from '../../consistency/median.ts';
import { type MedianShift, medianShift } from '../../consistency/summary/median-shift.ts';
import type { Feedback } from '../drill-view.ts';
import type { DiagnosedRep } from './diagnosed-rep.ts';
import { LEAST_CURVES } from './mean-curve.ts';

/** The reps of a block under one kind of feedback. */
export interface FeedbackFigures {
  /** A rep without braking counts, with a score of 0. */
  readonly reps: number;
  readonly medianScore: number | null;
  readonly medianReleaseErrorLevel: number | null;
}

/** What leaning on the own trace is worth: a release that only holds while it is seen is not learned yet. */
export interface ShownHidden {
  readonly shown: FeedbackFigures;
  readonly hidden: FeedbackFigures;
  /** Release error of hidden reps less that of shown ones (Hodges and Lehmann); null under three reps of either. */
  readonly difference: MedianShift | null;
}

export function shownHidden(reps: readonly DiagnosedRep[]): ShownHidden {
  const [shown, hidden] = [errorsOf(reps, 'shown'), errorsOf(reps, 'hidden')];
  const enough = Math.min(shown.length, hidden.length) >= LEAST_CURVES;
  return {
    shown: figures(reps, 'shown'),
    hidden: figures(reps, 'hidden'),
    difference: enough ? medianShift(shown, hidden) : null,
  };
}

function figures(reps: readonly DiagnosedRep[], feedback: Feedback): FeedbackFigures {
  const scores = reps.flatMap((rep) =>
    rep.feedback === feedback && rep.outcome !== null ? [rep.outcome.score] : [],
  );
  return {
    reps: scores.length,
    medianScore: median(scores),
    medianReleaseErrorLevel: median(errorsOf(reps, feedback)),
  };
}

function errorsOf(reps: readonly DiagnosedRep[], feedback: Feedback): number[] {
  return reps.flatMap(({ outcome, feedback: own }) =>
    own === feedback && outcome?.kind === 'scored' ? [outcome.releaseErrorLevel] : [],
  );
}
