import type { Interval } from '../../consistency/interval.ts';
import type { MedianShift } from '../../consistency/summary/median-shift.ts';
import { shortLevels } from '../diagnosis/diagnosis-json.ts';
import { meanCurve } from '../diagnosis/mean-curve.ts';
import type { ComparedRep } from './compared-rep.ts';
import type { Comparison } from './comparison.ts';

/** A comparison as `--json` prints it: levels 0..1 of the rig's full scale, all differences in the car less on the rig. */
export function comparisonJson({
  grid,
  rig,
  car,
  phases,
  points,
  force,
  ...left
}: Comparison): object {
  return {
    method: 'shift by Hodges and Lehmann with its exact interval',
    rig_reps: rig.map(({ number }) => number),
    zones: car.map(({ number }) => number),
    left_out_reps: left.uncomparedRig,
    left_out_zones: left.uncomparedCar,
    phases: phases.map((phase) => ({
      phase: phase.phase,
      verdict: phase.verdict,
      difference_level: phase.difference?.shift ?? null,
      difference_level_interval: intervalJson(phase.difference),
      margin_level: phase.marginLevel,
      rig_spread_level: phase.rigSpreadLevel,
      car_spread_level: phase.carSpreadLevel,
    })),
    key_points: points.map(({ point, difference }) => ({
      key_point: point,
      difference_s: difference?.shift ?? null,
      difference_s_interval: intervalJson(difference),
    })),
    force_ratio: force.ratio?.value ?? null,
    force_ratio_interval: force.ratio === null ? null : plain(force.ratio.interval),
    curves: {
      from_s: grid.fromS,
      step_s: grid.stepS,
      target_level: shortLevels(grid.target),
      rig_mean_level: meanLevels(rig),
      car_mean_level: meanLevels(car),
    },
  };
}

function intervalJson(difference: MedianShift | null): object | null {
  return difference === null ? null : plain(difference.interval);
}

function plain({ low, high, level }: Interval): object {
  return { low, high, attained_share: level };
}

function meanLevels(reps: readonly ComparedRep[]): readonly number[] | null {
  const mean = meanCurve(reps.map(({ curve }) => curve));
  return mean === null ? null : shortLevels(mean);
}
