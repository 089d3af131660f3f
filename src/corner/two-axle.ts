import { type Aero, dragN } from '../car/aero.ts';
import { type BrakeSplit, totalForAxleN } from '../car/brake-split.ts';
import type { Chassis } from '../car/chassis.ts';
import { axleFrictionFactor, type Tyre } from '../car/tyre.ts';
import { STANDARD_GRAVITY_MPS2 } from '../units.ts';
import { brakeLimit } from './axle-limit.ts';
import { type BrakingLimit, type BrakingModel, JUST_ON_N } from './braking-model.ts';
import { cornerLimitSquared } from './corner-limit.ts';
import type { Path } from './path.ts';
import { type WheelForces, wheelForces } from './wheel-forces.ts';

/** The car as the solver needs it, at one state of brakes and tyres. */
export interface TwoAxleCar {
  readonly chassis: Chassis;
  readonly aero: Aero;
  readonly frontTyre: Tyre;
  readonly rearTyre: Tyre;
  /** Mean of the two tracks, m; lateral load transfer follows from it. */
  readonly trackM: number;
  /** Share of the friction-brake force on the front axle, where it is the same for every force. */
  readonly frontBrakeShare: number;
  /** How the force divides where push-out or a rear valve bends it; absent where `frontBrakeShare` says it all. */
  readonly brakeSplit?: BrakeSplit;
  /** Share of the engine's force on the front axle: 0 rear-driven, 1 front-driven. */
  readonly frontDriveShare: number;
  /** Rolling resistance as a share of the weight. */
  readonly rollingResistance: number;
  /** Share of the grip to use, 0..1. */
  readonly gripShare: number;
}

/** The road beside its curvature. Angles are small: sin is taken as the tangent. */
export interface Road {
  readonly curvatureAt: Path['curvatureAt'];
  /** Slope, positive uphill, as a ratio. */
  slopeAt(sM: number): number;
  /** Bank, positive where it helps the corner, as a ratio. */
  bankAt(sM: number): number;
}

/** Braking force of the engine, and of a hybrid's motor, at a place and squared speed, N, both axles together. */
export type EngineBraking = (sM: number, speedSquared: number) => number;

/** What moves the limits of a two-axle car beside its speed and place. */
export interface AxleCircumstances {
  /**
   * Load, N, that the front axle has at a place beyond what its braking there accounts for: positive where braking has just
   * been less and the load is still on its way back, negative where it is still on its way forward. None if left out.
   */
  readonly lateLoadN?: (sM: number) => number;
  /** Braking of the engine with the foot off the brake, where something ends with it; `engineBraking` if left out. */
  readonly offBrake?: EngineBraking;
}

/** Of its load, how much more the front axle may be asked for than has arrived. */
export const SPARE_LOAD = 0.02;

/**
 * The loads that an axle can be asked to brake with while pitch is still under way. Load that is late hurts the axle that
 * it is missing from; the other one is not asked for more because of it.
 */
export function loadsMeanwhile(forces: WheelForces, lateLoadN: number): WheelForces {
  if (lateLoadN === 0) return forces;
  const { frontLoadN, rearLoadN, frontAcrossN, rearAcrossN } = forces;
  return {
    frontLoadN: frontLoadN + Math.min(0, lateLoadN + SPARE_LOAD * frontLoadN),
    rearLoadN: rearLoadN - Math.max(0, lateLoadN),
    frontAcrossN,
    rearAcrossN,
  };
}

/**
 * The two-axle model: friction ellipses of both axles with load transfer, downforce, fixed brake distribution and
 * engine braking. Limited by the front axle early and by the rear axle late. Left out: yaw inertia, transient tyre
 * forces, kerbs, tyre temperature.
 *
 * @source axle circles with load transfer after Gillespie, Fundamentals of Vehicle Dynamics, ch. 3, combined with the
 *   friction circle of Milliken and Milliken, Race Car Vehicle Dynamics, ch. 2
 */
export function twoAxleModel(
  car: TwoAxleCar,
  road: Road,
  engineBraking: EngineBraking = () => 0,
  { lateLoadN = () => 0, offBrake = engineBraking }: AxleCircumstances = {},
): BrakingModel {
  const { massKg } = car.chassis;
  const frontLimit = brakeLimit(car, 'front');
  const rearLimit = brakeLimit(car, 'rear');
  const carriedEngineN = carriedEngine(car);
  const resistanceN = (sM: number, w: number, forces: WheelForces): number =>
    dragN(car.aero, Math.sqrt(w)) +
    car.rollingResistance * (forces.frontLoadN + forces.rearLoadN) +
    massKg * STANDARD_GRAVITY_MPS2 * road.slopeAt(sM);
  // Where nothing is left for the brakes, the throttle takes out what the axles do not carry of the engine either.
  const offBrakeN = (sM: number, w: number, forces: WheelForces | null): number => {
    const engineN = offBrake(sM, w);
    return forces === null ? engineN : carriedEngineN(forces, engineN);
  };
  const limit = (sM: number, w: number, mostN = Number.POSITIVE_INFINITY): BrakingLimit => {
    const engineN = engineBraking(sM, w);
    const rest = wheelForces(car, road, sM, w);
    const lateN = lateLoadN(sM);
    const forces = loadsMeanwhile(rest, lateN);
    // A foot off the brake decides only where the axles would carry some of it.
    const askedN = Math.max(mostN, JUST_ON_N);
    const frontN = frontLimit(forces.frontLoadN, forces.frontAcrossN, engineN, askedN);
    const carriedN = rearLimit(forces.rearLoadN, forces.rearAcrossN, engineN, frontN);
    const byFoot = carriedN >= askedN;
    const brakeForceN = byFoot ? mostN : carriedN;
    const heldN = brakeForceN > 0 ? engineN : offBrakeN(sM, w, byFoot ? null : forces);
    // With late load an axle can be full with the corner alone.
    const isRolling = !byFoot && lateN > 0 && brakeForceN + heldN === 0;
    const byAxle = carriedN < frontN ? 'rear axle' : 'front axle';
    return {
      brakeForceN,
      decelerationMps2: (brakeForceN + heldN + resistanceN(sM, w, rest)) / massKg,
      limiter: byFoot ? 'foot' : isRolling ? 'corner' : byAxle,
    };
  };
  return {
    limit,
    decelerationMps2: (sM, w, forceN) => {
      const others = resistanceN(sM, w, wheelForces(car, road, sM, w));
      const engineN = forceN > 0 ? engineBraking(sM, w) : offBrake(sM, w);
      return (forceN + engineN + others) / massKg;
    },
    cornerLimit: (sM) => cornerLimitSquared(car, road, sM),
    // The rear axle's limit falls linearly to nothing at the slowest point: the equation is regular.
    releaseLaw: () => null,
  };
}

/** How a car's brake force divides. */
export function brakeSplitIn({ brakeSplit, frontBrakeShare }: TwoAxleCar): BrakeSplit {
  return brakeSplit ?? [{ fromN: 0, share: frontBrakeShare, offsetN: 0 }];
}

/** How much of an engine's braking the axles carry without the brakes, N. */
function carriedEngine(car: TwoAxleCar): (forces: WheelForces, engineN: number) => number {
  const { brakeSplit: _, ...unsplit } = car;
  const dragged = { ...unsplit, frontBrakeShare: car.frontDriveShare };
  const frontLimit = brakeLimit(dragged, 'front');
  const rearLimit = brakeLimit(dragged, 'rear');
  return (forces, engineN) => {
    if (engineN <= 0) return engineN;
    const front = frontLimit(forces.frontLoadN, forces.frontAcrossN, 0);
    return Math.min(engineN, front, rearLimit(forces.rearLoadN, forces.rearAcrossN, 0));
  };
}

interface Place {
  readonly sM: number;
  readonly w: number;
  readonly engineN: number;
}

/**
 * Largest friction-brake force, N, both axles together, while only part of the load transfer has arrived.
 * @param place `transferN` is the load that has moved from the rear axle to the front one so far
 */
export function axleLimitsUnderLoadN(
  car: TwoAxleCar,
  road: Road,
  place: Place & { readonly transferN: number },
): number {
  const forces = wheelForces(car, road, place.sM, place.w);
  const split = brakeSplitIn(car);
  const { frontDriveShare } = car;
  const frontN = alongN(
    car,
    car.frontTyre,
    forces.frontLoadN + place.transferN,
    forces.frontAcrossN,
  );
  const rearN = alongN(car, car.rearTyre, forces.rearLoadN - place.transferN, forces.rearAcrossN);
  return Math.min(
    totalForAxleN(split, 'front', Math.max(0, frontN - frontDriveShare * place.engineN)),
    totalForAxleN(split, 'rear', Math.max(0, rearN - (1 - frontDriveShare) * place.engineN)),
  );
}

/** What an axle under a load carries along beside its lateral force, N. */
function alongN(car: TwoAxleCar, tyre: Tyre, loadN: number, acrossN: number): number {
  const load = Math.max(0, loadN);
  const moved = (acrossN * car.chassis.cgHeightM) / car.trackM;
  const mu = car.gripShare * tyre.longitudinalFriction * axleFrictionFactor(tyre, load, moved);
  const across = (acrossN * tyre.longitudinalFriction) / tyre.lateralFriction;
  return Math.sqrt(Math.max(0, (mu * load) ** 2 - across ** 2));
}
