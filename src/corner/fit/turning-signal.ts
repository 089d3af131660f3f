import type { FitCar } from './fit-car.ts';
import type { FitSignals } from './fit-signals.ts';

/** A logged signal that is a curvature times something known, but for noise and a constant offset. */
export interface TurningSignal {
  readonly kind: 'yaw-rate' | 'lateral-acceleration' | 'steering' | 'steering-shape';
  readonly values: Float64Array;
  /** values = gain x curvature, one for each sample. */
  readonly gain: Float64Array;
  /** Says the radius; the shape of steering without a car says only where and how it turns. */
  readonly isCurvature: boolean;
  /** Its sign says left or right. */
  readonly isSigned: boolean;
}

/**
 * The signals that say how the car turned, the most trusted first: yaw rate r = v k, lateral acceleration a = v^2 k
 * (roll and bank are in it), steering by the understeer of the car, and steering alone as a shape.
 *
 * @source kinematics of a curved path; understeer gradient after Gillespie, Fundamentals of Vehicle Dynamics, ch. 6
 */
export function turningSignals(signals: FitSignals, car: FitCar | null): TurningSignal[] {
  const { speedMps, yawRadps, lateralMps2, steeringRad, isSteeringSigned } = signals;
  const found: TurningSignal[] = [];
  const all = { isCurvature: true, isSigned: true };
  if (yawRadps !== null) found.push({ kind: 'yaw-rate', values: yawRadps, gain: speedMps, ...all });
  if (lateralMps2 !== null)
    found.push({
      kind: 'lateral-acceleration',
      values: lateralMps2,
      gain: speedMps.map((v) => v * v),
      ...all,
    });
  if (steeringRad !== null)
    found.push({
      kind: car === null ? 'steering-shape' : 'steering',
      values: steeringRad,
      gain: speedMps.map((v) => (car === null ? 1 : car.steeringPerCurvature(v))),
      isCurvature: car !== null,
      isSigned: isSteeringSigned,
    });
  return found;
}
