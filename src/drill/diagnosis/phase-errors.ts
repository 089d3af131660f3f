import type { Interval } from '../../consistency/interval.ts';
import { mean } from '../../consistency/mean.ts';
import { meanInterval } from '../../consistency/summary/mean-interval.ts';
import { spreadOf } from '../spread.ts';
import type { BlockGrid, Stretch } from './block-grid.ts';
import { LEAST_CURVES } from './mean-curve.ts';

/** How far the reps of a block were from the target in one phase, and from each other. */
export interface PhaseErrors {
  /** Mean over the reps of the mean signed difference over the phase: positive is heavy. Null without a rep. */
  readonly averageErrorLevel: number | null;
  /** Where the driver's own average lies (Student's t between reps); null under three reps. */
  readonly averageErrorInterval: Interval | null;
  /** Root mean square over the phase of the standard deviation between reps; null under three reps. */
  readonly spreadLevel: number | null;
}

/** @param curves by `repCurve`, on `grid` */
export function phaseErrors(
  curves: readonly Float64Array[],
  { target }: BlockGrid,
  { from, to }: Stretch,
): PhaseErrors {
  if (to <= from) return { averageErrorLevel: null, averageErrorInterval: null, spreadLevel: null };
  const errors = curves.map((curve) => meanDifference(curve, target, from, to));
  return {
    averageErrorLevel: mean(errors),
    averageErrorInterval: errors.length < LEAST_CURVES ? null : meanInterval(errors),
    spreadLevel: spreadOf(curves.map((curve) => curve.subarray(from, to))),
  };
}

function meanDifference(
  curve: Float64Array,
  target: Float64Array,
  from: number,
  to: number,
): number {
  let sum = 0;
  for (let i = from; i < to; i++) sum += curve[i]! - target[i]!;
  return sum / (to - from);
}
