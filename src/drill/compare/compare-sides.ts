import { median } from '../../consistency/median.ts';
import { medianShift } from '../../consistency/summary/median-shift.ts';
import type { Target } from '../../target/target.ts';
import { blockGrid } from '../diagnosis/block-grid.ts';
import { BRAKE_PHASES } from '../diagnosis/brake-phases.ts';
import { LEAST_CURVES } from '../diagnosis/mean-curve.ts';
import { comparePhase } from './compare-phase.ts';
import { comparePoints } from './compare-points.ts';
import {
  type ComparedRep,
  comparedRep,
  type NumberedRecord,
  type UncomparedRep,
} from './compared-rep.ts';
import type { Comparison, ForceComparison } from './comparison.ts';

/** What is compared. */
interface Sides {
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
    points: comparePoints(rig.reps, car.reps),
  };
}

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
