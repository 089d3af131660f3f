import { medianShift } from '../../consistency/summary/median-shift.ts';
import type { RepScore } from '../../score/rep-score.ts';
import { LEAST_CURVES } from '../diagnosis/mean-curve.ts';
import type { ComparedRep } from './compared-rep.ts';
import type { ComparedPoint, PointComparison } from './comparison.ts';

/** Each point with how late a rep came to it; null where it is not known. In the order in which they are told. */
const ERRORS_S: Readonly<Record<ComparedPoint, (outcome: RepScore) => number | null>> = {
  rise: ({ riseErrorS }) => riseErrorS,
  'start of release': ({ keyPointErrorsS }) => keyPointErrorsS.startOfRelease,
  'half release': ({ keyPointErrorsS }) => keyPointErrorsS.halfRelease,
  'final release': ({ keyPointErrorsS }) => keyPointErrorsS.finalRelease,
  'brake off': ({ keyPointErrorsS }) => keyPointErrorsS.brakeOff,
  'wheel to brake': ({ side }) => side.steeringLagS,
};

/** When the points of the braking came, in the car against on the rig. */
export function comparePoints(
  rig: readonly ComparedRep[],
  car: readonly ComparedRep[],
): PointComparison[] {
  return Object.entries(ERRORS_S).map(([point, errorS]) => {
    const [onRig, inCar] = [rig, car].map((reps) =>
      reps.flatMap(({ outcome }) => errorS(outcome) ?? []),
    );
    const enough = Math.min(onRig!.length, inCar!.length) >= LEAST_CURVES;
    return {
      point: point as ComparedPoint,
      difference: enough ? medianShift(onRig!, inCar!) : null,
    };
  });
}
