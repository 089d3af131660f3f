import { type Aero, downforceN, dragN } from '../car/aero.ts';
import { frontLimitN, rearLimitN } from '../car/axle-ellipse.ts';
import { type Axles, type Chassis, staticAxleLoadsN, wheelbaseM } from '../car/chassis.ts';
import { axleFrictionFactor, type Tyre } from '../car/tyre.ts';
import { STANDARD_GRAVITY_MPS2 } from '../units.ts';
import type { BrakingLimit, BrakingModel } from './braking-model.ts';
import type { Path } from './path.ts';

/** The car as the solver needs it, at one state of brakes and tyres. */
export interface TwoAxleCar {
  readonly chassis: Chassis;
  readonly aero: Aero;
  readonly frontTyre: Tyre;
  readonly rearTyre: Tyre;
  /** Mean of the two tracks, m; lateral load transfer follows from it. */
  readonly trackM: number;
  /** Share of the friction-brake force on the front axle. */
  readonly frontBrakeShare: number;
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

/** Rounds of the fixed point for friction that depends on load; each gains about one decimal place. */
const LOAD_ROUNDS = 4;

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
): BrakingModel {
  const { chassis } = car;
  const resistance = (sM: number, w: number, engineN: number): number =>
    dragN(car.aero, Math.sqrt(w)) +
    engineN +
    car.rollingResistance * loadsN(car, road, sM, w).total +
    chassis.massKg * STANDARD_GRAVITY_MPS2 * road.slopeAt(sM);
  const deceleration = (sM: number, w: number, forceN: number): number =>
    (forceN + resistance(sM, w, engineBraking(sM, w))) / chassis.massKg;
  const limit = (sM: number, w: number): BrakingLimit => {
    const { front, rear } = axleLimitsN(car, road, { sM, w, engineN: engineBraking(sM, w) });
    const brakeForceN = Math.min(front, rear);
    return {
      brakeForceN,
      decelerationMps2: deceleration(sM, w, brakeForceN),
      limiter: front <= rear ? 'front axle' : 'rear axle',
    };
  };
  return {
    limit,
    decelerationMps2: deceleration,
    cornerLimit: (sM) => cornerLimitSquared(car, road, sM),
    // The rear axle's limit falls linearly to nothing at the slowest point: the equation is regular.
    releaseLaw: () => null,
  };
}

/** Axle loads without load transfer, N: weight on slope and bank, downforce, the corner pressing into the bank. */
export function loadsN(
  car: TwoAxleCar,
  road: Road,
  sM: number,
  w: number,
): Axles & { readonly total: number } {
  const rest = staticAxleLoadsN(car.chassis);
  const press = 1 + (road.bankAt(sM) * Math.abs(road.curvatureAt(sM)) * w) / STANDARD_GRAVITY_MPS2;
  const down = downforceN(car.aero, Math.sqrt(w));
  const front = rest.front * press + down.front;
  const rear = rest.rear * press + down.rear;
  return { front, rear, total: front + rear };
}

/** Lateral force of each axle, N, after what the bank carries. */
export function lateralForcesN(car: TwoAxleCar, road: Road, sM: number, w: number): Axles {
  const { chassis } = car;
  const across = Math.abs(road.curvatureAt(sM)) * w - STANDARD_GRAVITY_MPS2 * road.bankAt(sM);
  const force = (chassis.massKg * Math.abs(across)) / wheelbaseM(chassis);
  return { front: force * chassis.cgToRearM, rear: force * chassis.cgToFrontM };
}

interface Place {
  readonly sM: number;
  readonly w: number;
  readonly engineN: number;
}

/** Largest friction-brake force each axle allows, N. */
export function axleLimitsN(car: TwoAxleCar, road: Road, { sM, w, engineN }: Place): Axles {
  const { chassis } = car;
  const loads = loadsN(car, road, sM, w);
  const lateral = lateralForcesN(car, road, sM, w);
  const perNewton = chassis.cgHeightM / wheelbaseM(chassis);
  const solve = (side: 'front' | 'rear', tyre: Tyre): number => {
    const sign = side === 'front' ? 1 : -1;
    const share = side === 'front' ? car.frontBrakeShare : 1 - car.frontBrakeShare;
    const driven = side === 'front' ? car.frontDriveShare : 1 - car.frontDriveShare;
    const limitOf = side === 'front' ? frontLimitN : rearLimitN;
    const transferN = (lateral[side] * chassis.cgHeightM) / car.trackM;
    let force = 0;
    for (let round = 0; round < (tyre.loadSensitivity === 0 ? 1 : LOAD_ROUNDS); round++) {
      const load = loads[side] + sign * (force + engineN) * perNewton;
      const factor = car.gripShare * axleFrictionFactor(tyre, load, transferN);
      force = limitOf(chassis, {
        mu: tyre.longitudinalFriction * factor,
        loadN: loads[side],
        brakeShare: share,
        lateralN: (lateral[side] * tyre.longitudinalFriction) / tyre.lateralFriction,
        engineN: engineN * driven,
        totalEngineN: engineN,
      });
      if (!Number.isFinite(force)) return force;
    }
    return force;
  };
  return { front: solve('front', car.frontTyre), rear: solve('rear', car.rearTyre) };
}

/**
 * Largest squared speed at which both axles carry the corner without braking, by bisection on the grip left: it falls
 * with speed wherever the corner needs more than downforce gives.
 */
function cornerLimitSquared(car: TwoAxleCar, road: Road, sM: number): number {
  if (road.curvatureAt(sM) === 0) return Number.POSITIVE_INFINITY;
  const holds = (w: number): boolean => {
    const loads = loadsN(car, road, sM, w);
    const lateral = lateralForcesN(car, road, sM, w);
    return (['front', 'rear'] as const).every((side) => {
      const tyre = side === 'front' ? car.frontTyre : car.rearTyre;
      const moved = (lateral[side] * car.chassis.cgHeightM) / car.trackM;
      const mu =
        car.gripShare * tyre.lateralFriction * axleFrictionFactor(tyre, loads[side], moved);
      return lateral[side] <= mu * loads[side];
    });
  };
  let high = 200 ** 2;
  if (holds(high)) return Number.POSITIVE_INFINITY;
  let low = 0;
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (holds(middle)) low = middle;
    else high = middle;
  }
  return low;
}
