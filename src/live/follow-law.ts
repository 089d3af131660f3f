import { pedalForceOf } from '../car/brake-force.ts';
import { JUST_ON_N } from '../corner/braking-model.ts';
import { profileCurve } from '../corner/profile-curve.ts';
import type { DerivedTarget } from '../target/derive/derive-target.ts';
import { type GearSchedule, zoneModel, zoneSetting } from '../target/derive/zone-model.ts';
import { atTheDiscsN } from '../target/derive/zone-point.ts';

/**
 * What is right for a car that is slower than the target. `ratio`: it brakes less by as much as its squared speed is
 * less, so that the ratio of the speeds stays to the slowest point (dw/ds = -2 D is linear in w). `place`: it does what
 * the target does there and is slower still. `speed`: it does what the target does at that speed, only earlier on the
 * road, and rolls to the corner.
 */
export type SlowerWay = 'ratio' | 'place' | 'speed';

/** Brake forces of both axles at the road, N, that are asked for at a place and a speed. */
export interface FollowLaw {
  /** What the first application goes for: the limit at the car's own speed. */
  aimN(sM: number, speedMps: number): number;
  /** Once the application has met it. */
  forceN(sM: number, speedMps: number): number;
  /** Pedal force that gives a brake force at the road, N; 0 for none. */
  pedalN(sM: number, speedMps: number, brakeForceN: number): number;
}

/**
 * What the target asks for from whatever speed the car has. Slower cars see `SlowerWay`. A faster one has the target's
 * force of the place, and on the straight what its own downforce adds to that. The rail would leave it no brakes at all
 * in the corner, and a foot that is 3 % light would have nothing left to release; a driver runs a little wide instead.
 *
 * @param schedule the gears the car was really in
 */
export function followLaw(
  derived: DerivedTarget,
  schedule: GearSchedule,
  slower: SlowerWay,
): FollowLaw {
  const { car, corner, zone } = derived;
  const profile = profileCurve(zone.profile);
  const model = zoneModel(zone.model, zoneSetting(car, corner), schedule);
  const limitN = (sM: number, speedMps: number): number =>
    model.limit(sM, speedMps ** 2).brakeForceN;
  const fasterN = (sM: number, speedMps: number): number => {
    const own = limitN(sM, speedMps);
    const targets = limitN(sM, profile.speedMps(sM));
    const gain = targets > 0 && own > targets ? own / targets : 1;
    return profile.brakeForceN(sM) * gain;
  };
  const ratioN = (sM: number, speedMps: number): number => {
    const k = (speedMps / profile.speedMps(sM)) ** 2;
    const othersMps2 = model.decelerationMps2(sM, speedMps ** 2, JUST_ON_N);
    return Math.max(0, car.chassis.massKg * (k * profile.decelerationMps2(sM) - othersMps2));
  };
  const speedN = (speedMps: number): number => profile.brakeForceN(profile.placeOf(speedMps));
  const pedalForceN = pedalForceOf(car.brakes);
  const isSlower = (sM: number, speedMps: number): boolean => speedMps < profile.speedMps(sM);
  const aimN = (sM: number, speedMps: number): number =>
    isSlower(sM, speedMps) ? speedN(speedMps) : fasterN(sM, speedMps);
  const slowerN: Readonly<Record<SlowerWay, FollowLaw['forceN']>> = {
    ratio: ratioN,
    place: (sM) => profile.brakeForceN(sM),
    speed: (_, speedMps) => speedN(speedMps),
  };
  return {
    aimN,
    forceN: (sM, speedMps) =>
      isSlower(sM, speedMps) ? slowerN[slower](sM, speedMps) : fasterN(sM, speedMps),
    pedalN: (sM, speedMps, brakeForceN) => {
      if (!(brakeForceN > 0)) return 0;
      const decelerationMps2 = model.decelerationMps2(sM, speedMps ** 2, brakeForceN);
      return pedalForceN(atTheDiscsN(car, { brakeForceN, decelerationMps2 }));
    },
  };
}
