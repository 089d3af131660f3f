import { median } from '../../consistency/median.ts';
import { type MedianShift, medianShift } from '../../consistency/summary/median-shift.ts';
import type { BlockGrid } from '../diagnosis/block-grid.ts';
import type { BrakePhase } from '../diagnosis/brake-phases.ts';
import { spreadOf } from '../spread.ts';
import type { ComparedRep } from './compared-rep.ts';
import type { CarryVerdict, PhaseComparison } from './comparison.ts';

/** On the brake less than this share of the target, a side has not done the phase at all. */
const LEAST_DONE_SHARE = 0.25;

/** Mean levels over one phase of the brake, in the car against on the rig. */
export function comparePhase(
  phase: BrakePhase,
  rig: readonly ComparedRep[],
  car: readonly ComparedRep[],
  grid: BlockGrid,
): PhaseComparison {
  const { from, to } = grid.phases[phase];
  const levels = (reps: readonly ComparedRep[]): number[] =>
    reps.map(({ curve }) => meanOf(curve, from, to));
  const spread = (reps: readonly ComparedRep[]): number | null =>
    spreadOf(reps.map(({ curve }) => curve.subarray(from, to)));
  const difference = to > from ? medianShift(levels(rig), levels(car)) : null;
  // nobody carries over what nobody does
  const isDone = [rig, car].some(
    (reps) => median(levels(reps))! >= LEAST_DONE_SHARE * meanOf(grid.target, from, to),
  );
  const marginLevel = to > from ? meanOf(grid.corridor, from, to) : 0;
  return {
    phase,
    difference,
    marginLevel,
    rigSpreadLevel: spread(rig),
    carSpreadLevel: spread(car),
    verdict: isDone ? verdictOf(difference, marginLevel) : 'not driven',
  };
}

function verdictOf(difference: MedianShift | null, margin: number): CarryVerdict {
  if (difference === null) return 'open';
  const { shift, interval } = difference;
  if (interval.low > -margin && interval.high < margin) return 'carried over';
  const isChance = interval.low <= 0 && interval.high >= 0;
  return !isChance && Math.abs(shift) > margin ? 'not' : 'open';
}

function meanOf(curve: Float64Array, from: number, to: number): number {
  return curve.subarray(from, to).reduce((sum, level) => sum + level, 0) / (to - from);
}
