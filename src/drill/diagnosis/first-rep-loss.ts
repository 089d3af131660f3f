import { median } from '../../consistency/median.ts';
import { nextValueInterval } from '../../consistency/summary/mean-interval.ts';
import type { DiagnosedRep } from './diagnosed-rep.ts';
import { LEAST_CURVES } from './mean-curve.ts';

/** What the first rep of a block costs against the others: the lap that a race gives only once. */
export interface FirstRepLoss {
  /** Median score of the others less that of the first: positive is a loss. */
  readonly scorePoints: number;
  /** Release error of the first less the median of the others: positive is a loss. Null where the first has none. */
  readonly releaseErrorLevel: number | null;
  /** More than the others would let one more rep be out (interval of the next value, 95 %); null where unknown. */
  readonly beyondSpread: boolean | null;
  /** Scored reps after the first. */
  readonly others: number;
}

/** Null without a scored first rep, and under three others. */
export function firstRepLoss(reps: readonly DiagnosedRep[]): FirstRepLoss | null {
  const first = reps.find(({ place, outcome }) => place === 1 && outcome !== null)?.outcome;
  const others = reps.flatMap(({ place, outcome }) => (place > 1 && outcome ? [outcome] : []));
  if (first == null || others.length < LEAST_CURVES) return null;
  const errors = others.flatMap((outcome) =>
    outcome.kind === 'scored' ? [outcome.releaseErrorLevel] : [],
  );
  const own = first.kind === 'scored' ? first.releaseErrorLevel : null;
  const usual = errors.length < LEAST_CURVES ? null : median(errors);
  return {
    scorePoints: median(others.map(({ score }) => score))! - first.score,
    releaseErrorLevel: own === null || usual === null ? null : own - usual,
    beyondSpread: own === null || usual === null ? null : own > nextValueInterval(errors)!.high,
    others: others.length,
  };
}
