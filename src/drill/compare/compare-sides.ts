import type { Interval } from '../../consistency/interval.ts';
import { median } from '../../consistency/median.ts';
import { type MedianShift, medianShift } from '../../consistency/summary/median-shift.ts';
import type { RepScore } from '../../score/rep-score.ts';
import type { Target } from '../../target/target.ts';
import {
  type BlockGrid,
  BRAKE_PHASES,
  type BrakePhase,
  blockGrid,
} from '../diagnosis/block-grid.ts';
import { LEAST_CURVES } from '../diagnosis/mean-curve.ts';
import { spreadOf } from '../spread.ts';
import {
  type ComparedRep,
  comparedRep,
  type NumberedRecord,
  type UncomparedRep,
} from './compared-rep.ts';

/** What is compared. */
export interface Sides {
  /** Over time. */
  readonly target: Target;
  readonly rig: readonly NumberedRecord[];
  /** The logged zones with this much of the brake's unit as level 1. */
  carAt(fullScale: number): readonly NumberedRecord[];
  /** No zone goes beyond it: the brake's unit. */
  readonly hardest: number;
  /** What level 1 stands for in the car, where somebody says it. */
  readonly fullScale: number | null;
}

/**
 * `carried over`: the whole interval of the difference is inside the margin; `not`: it does not hold 0, and the
 * difference is more than the margin; `not driven`: neither side was on the brake there; else `open`.
 */
export type CarryVerdict = 'carried over' | 'not' | 'not driven' | 'open';

export interface PhaseComparison {
  readonly phase: BrakePhase;
  /** In the car less on the rig, as a level of the rig; null for a phase of no length. */
  readonly difference: MedianShift | null;
  /** What of it would not matter: half the corridor's width, on average over the phase. */
  readonly marginLevel: number;
  readonly rigSpreadLevel: number | null;
  readonly carSpreadLevel: number | null;
  readonly verdict: CarryVerdict;
}

export const COMPARED_POINTS = [
  'rise',
  'start of release',
  'half release',
  'final release',
  'brake off',
  'wheel to brake',
] as const;
export type ComparedPoint = (typeof COMPARED_POINTS)[number];

export interface PointComparison {
  readonly point: ComparedPoint;
  /** In the car less on the rig, seconds after the onset: positive is later, for `rise` slower. Null under three of a side. */
  readonly difference: MedianShift | null;
}

export interface ForceComparison {
  /** What stands for level 1 of the rig once both plateaus agree, in the brake's unit of the log. */
  readonly levelOneInCar: number;
  /** Pressed in the car over pressed on the rig, at the full scale that is given; null where nobody says it. */
  readonly ratio: { readonly value: number; readonly interval: Interval } | null;
}

export interface Comparison {
  readonly grid: BlockGrid;
  readonly rig: readonly ComparedRep[];
  readonly car: readonly ComparedRep[];
  readonly uncomparedRig: readonly UncomparedRep[];
  readonly uncomparedCar: readonly UncomparedRep[];
  readonly force: ForceComparison;
  readonly phases: readonly PhaseComparison[];
  readonly points: readonly PointComparison[];
}

/** Too few on a side: how many there are. */
export type TooFew = Pick<Comparison, 'uncomparedRig' | 'uncomparedCar'> & {
  readonly kind: 'too few';
  readonly rigReps: number;
  readonly carReps: number;
};

/**
 * Holds logged braking zones against reps on the rig, by one ruler, with the pedal's force taken out: the levels in the
 * car are scaled so that the median plateau of both sides is equally far from the target's. What is left is a
 * matter of shape and time. All differences are shifts by Hodges and Lehmann with their exact intervals.
 *
 * @throws Problem for a target that is not over time
 */
export function compareSides(sides: Sides): Comparison | TooFew {
  const { target, hardest, fullScale } = sides;
  const rig = parted(sides.rig, target);
  const raw = parted(sides.carAt(hardest), target);
  const few = tooFew(rig, raw);
  if (few !== null) return few;
  const gains = [rig, raw].map(({ reps }) => reps.map(({ gain }) => gain));
  const levelOneInCar = (hardest * median(gains[1]!)!) / median(gains[0]!)!;
  const car = parted(sides.carAt(levelOneInCar), target);
  const fewer = tooFew(rig, car);
  if (fewer !== null) return fewer;
  const grid = blockGrid(target);
  return {
    grid,
    rig: rig.reps,
    car: car.reps,
    uncomparedRig: rig.uncompared,
    uncomparedCar: car.uncompared,
    force: {
      levelOneInCar,
      ratio: fullScale === null ? null : forceRatio(gains[0]!, gains[1]!, hardest / fullScale),
    },
    phases: BRAKE_PHASES.map((phase) => comparePhase(phase, rig.reps, car.reps, grid)),
    points: COMPARED_POINTS.map((point) => comparePoint(point, rig.reps, car.reps)),
  };
}

/** On the brake less than this share of the target, a side has not done the phase at all. */
const LEAST_DONE_SHARE = 0.25;

interface Parted {
  readonly reps: readonly ComparedRep[];
  readonly uncompared: readonly UncomparedRep[];
}

function parted(records: readonly NumberedRecord[], target: Target): Parted {
  const all = records.map((one) => comparedRep(one, target));
  return {
    reps: all.flatMap((rep) => ('reason' in rep ? [] : [rep])),
    uncompared: all.flatMap((rep) => ('reason' in rep ? [rep] : [])),
  };
}

function tooFew(rig: Parted, car: Parted): TooFew | null {
  if (Math.min(rig.reps.length, car.reps.length) >= LEAST_CURVES) return null;
  return {
    kind: 'too few',
    rigReps: rig.reps.length,
    carReps: car.reps.length,
    uncomparedRig: rig.uncompared,
    uncomparedCar: car.uncompared,
  };
}

/** A factor is a shift of logarithms. */
function forceRatio(
  rig: readonly number[],
  car: readonly number[],
  scale: number,
): ForceComparison['ratio'] {
  const logs = (gains: readonly number[], factor: number): number[] =>
    gains.map((gain) => Math.log(gain * factor));
  const { shift, interval } = medianShift(logs(rig, 1), logs(car, scale))!;
  const { low, high, level } = interval;
  return { value: Math.exp(shift), interval: { low: Math.exp(low), high: Math.exp(high), level } };
}

function comparePhase(
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

function comparePoint(
  point: ComparedPoint,
  rig: readonly ComparedRep[],
  car: readonly ComparedRep[],
): PointComparison {
  const values = (reps: readonly ComparedRep[]): number[] =>
    reps.flatMap(({ outcome }) => pointOf(point, outcome) ?? []);
  const [onRig, inCar] = [values(rig), values(car)];
  const enough = Math.min(onRig.length, inCar.length) >= LEAST_CURVES;
  return { point, difference: enough ? medianShift(onRig, inCar) : null };
}

function pointOf(point: ComparedPoint, outcome: RepScore): number | null {
  const { keyPointErrorsS: errors, riseErrorS, side } = outcome;
  switch (point) {
    case 'rise':
      return riseErrorS;
    case 'start of release':
      return errors.startOfRelease;
    case 'half release':
      return errors.halfRelease;
    case 'final release':
      return errors.finalRelease;
    case 'brake off':
      return errors.brakeOff;
    case 'wheel to brake':
      return side.steeringLagS;
  }
}
