import type { BrakingLimit, BrakingModel } from './braking-model.ts';
import type { Path } from './path.ts';

/**
 * The simple model: one friction ellipse for the whole car. Over-rates straight-line braking of a car with fixed brake
 * distribution, and releases with infinite slope into a clothoid; kept as a named model and as a check.
 */
export interface PointMass {
  readonly massKg: number;
  /** Grip along and across at no speed, m/s^2. */
  readonly alongMps2: number;
  readonly acrossMps2: number;
  /** Growth of both with downforce, per squared speed, as a share of the value at no speed, s^2/m^2. */
  readonly downforceShare: number;
  /** Deceleration by drag per squared speed, 1/m. */
  readonly dragPerMetre: number;
}

/**
 * D = a_x sqrt(1 - (kappa w / a_y)^2) + drag: drag uses no grip.
 * @source Velenis and Tsiotras, Journal of Optimization Theory and Applications (minimum-time travel with acceleration limits)
 */
export function pointMassModel(car: PointMass, curvatureAt: Path['curvatureAt']): BrakingModel {
  const gripAlong = (w: number): number => car.alongMps2 * (1 + car.downforceShare * w);
  const lateralShare = (sM: number, w: number): number =>
    (Math.abs(curvatureAt(sM)) * w) / (car.acrossMps2 * (1 + car.downforceShare * w));
  const decelerationMps2 = (_: number, w: number, forceN: number): number =>
    forceN / car.massKg + car.dragPerMetre * w;
  const limit = (sM: number, w: number, mostN = Number.POSITIVE_INFINITY): BrakingLimit => {
    const share = Math.min(1, lateralShare(sM, w));
    const gripN = car.massKg * gripAlong(w) * Math.sqrt(1 - share * share);
    const brakeForceN = Math.min(gripN, mostN);
    return {
      decelerationMps2: decelerationMps2(sM, w, brakeForceN),
      brakeForceN,
      limiter: gripN <= mostN ? 'grip' : 'foot',
    };
  };
  return {
    limit,
    decelerationMps2,
    cornerLimit: (sM) => {
      const spare = Math.abs(curvatureAt(sM)) - car.acrossMps2 * car.downforceShare;
      return spare > 0 ? car.acrossMps2 / spare : Number.POSITIVE_INFINITY;
    },
    releaseLaw: (slowestM) => pointMassRelease(car, curvatureAt, slowestM),
  };
}

/**
 * Where the curvature still rises at the slowest point (a clothoid into an arc) the release is a square root,
 * D = a_x sqrt(2 e kappa' / kappa); where it is level there (a smooth apex) it is linear, D = a_x m e with
 * m = sqrt(r^2 + q) - r, q = -kappa''/kappa and r = kappa a_x / a_y, less what downforce adds. Drag is left out: with
 * drag the car rides the corner's own limit here and the solver never asks.
 */
function pointMassRelease(
  car: PointMass,
  curvatureAt: Path['curvatureAt'],
  slowestM: number,
): (beforeM: number) => number {
  const h = 1e-3;
  const kappa = Math.abs(curvatureAt(slowestM));
  const before = Math.abs(curvatureAt(slowestM - h));
  const earlier = Math.abs(curvatureAt(slowestM - 2 * h));
  const slope = Math.max(0, (3 * kappa - 4 * before + earlier) / (2 * h)) / kappa;
  const bend = Math.max(0, (2 * before - kappa - earlier) / (h * h)) / kappa;
  const spare = kappa - car.acrossMps2 * car.downforceShare;
  const along = car.alongMps2 * (1 + (car.downforceShare * car.acrossMps2) / spare);
  const ratio = (spare * car.alongMps2) / car.acrossMps2;
  const linear = Math.sqrt(ratio * ratio + bend) - ratio;
  return (beforeM) => along * Math.max(Math.sqrt(2 * slope * beforeM), linear * beforeM);
}
