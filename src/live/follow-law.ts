import type { BrakingModel } from '../corner/braking-model.ts';
import { profileCurve } from '../corner/profile-curve.ts';
import type { DerivedTarget } from '../target/derive/derive-target.ts';
import { type GearSchedule, zoneModel } from '../target/derive/zone-model.ts';

/** Where the car is, how fast, and how tightly it is asked to turn. */
export interface Passing {
  readonly sM: number;
  readonly speedMps: number;
  /** Without its sign, 1/m. */
  readonly curvature: number;
}

/** What a driver on the limit gives, from whatever speed the car has. Friction brakes of both axles, N. */
export interface FollowLaw {
  /** What the first application goes for. */
  aimN(passing: Passing): number;
  /** Once the application has met it. */
  forceN(passing: Passing): number;
}

/**
 * With k the squared speed over the profile's at the place: a car that is slower (k below 1) brakes by k times the
 * profile's deceleration, so that the ratio of the speeds stays to the slowest point (dw/ds = -2 D is linear in w). A
 * car that is faster is at the limit that the target's share of the grip sets; where the profile's own force is more,
 * it may go on with that as long as the whole grip carries it. Both meet at k = 1.
 *
 * @param schedule the gears the car was really in
 */
export function followLaw(derived: DerivedTarget, schedule: GearSchedule): FollowLaw {
  const { car, corner, zone } = derived;
  const profile = profileCurve(zone.profile);
  let curvature = 0;
  const path = { ...corner.path, curvatureAt: () => curvature };
  const modelWith = (gripShare: number): BrakingModel =>
    zoneModel(zone.model, car, { ...corner, path, gripShare }, schedule);
  const shared = modelWith(corner.gripShare);
  const whole = modelWith(1);
  const ratio = ({ sM, speedMps }: Passing): number => (speedMps / profile.speedMps(sM)) ** 2;
  const limitN = (model: BrakingModel, { sM, speedMps }: Passing): number =>
    model.limit(sM, speedMps ** 2).brakeForceN;
  const allowedN = (passing: Passing): number =>
    Math.max(
      limitN(shared, passing),
      Math.min(profile.brakeForceN(passing.sM), limitN(whole, passing)),
    );
  return {
    aimN: (passing) => {
      curvature = passing.curvature;
      return ratio(passing) < 1 ? limitN(shared, passing) : allowedN(passing);
    },
    forceN: (passing) => {
      curvature = passing.curvature;
      const { sM, speedMps } = passing;
      const k = ratio(passing);
      const othersMps2 = shared.decelerationMps2(sM, speedMps ** 2, 0);
      const kept = car.chassis.massKg * (k * profile.decelerationMps2(sM) - othersMps2);
      const scaledN = Math.max(0, kept);
      return k < 1 ? scaledN : Math.min(scaledN, allowedN(passing));
    },
  };
}
