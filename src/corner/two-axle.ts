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
 * Largest friction-brake force, N, both axles together, while only part of the load transfer has arrived.
 * @param transferN load that has moved from the rear axle to the front one so far
 */
export function axleLimitsUnderLoadN(
  car: TwoAxleCar,
  road: Road,
  place: { readonly sM: number; readonly w: number; readonly transferN: number },
): number {
  const loads = loadsN(car, road, place.sM, place.w);
  const lateral = lateralForcesN(car, road, place.sM, place.w);
  const carried = (side: 'front' | 'rear', tyre: Tyre, share: number): number => {
    const load = Math.max(0, loads[side] + (side === 'front' ? 1 : -1) * place.transferN);
    const moved = (lateral[side] * car.chassis.cgHeightM) / car.trackM;
    const mu = car.gripShare * tyre.longitudinalFriction * axleFrictionFactor(tyre, load, moved);
    const across = (lateral[side] * tyre.longitudinalFriction) / tyre.lateralFriction;
    return Math.sqrt(Math.max(0, (mu * load) ** 2 - across ** 2)) / share;
  };
  return Math.min(
    carried('front', car.frontTyre, car.frontBrakeShare),
    carried('rear', car.rearTyre, 1 - car.frontBrakeShare),
  );
}

/**
 * Largest squared speed at which both axles carry the corner without braking. For one friction the balance
 * m (|kappa| w - g bank) arm / L = mu (N (1 + bank |kappa| w / g) + downforce w) is linear in w; friction that depends
 * on load is settled by repeating it.
 */
function cornerLimitSquared(car: TwoAxleCar, road: Road, sM: number): number {
  const curvature = Math.abs(road.curvatureAt(sM));
  if (curvature === 0) return Number.POSITIVE_INFINITY;
  return Math.min(
    axleCornerLimit(car, road, sM, 'front', car.frontTyre),
    axleCornerLimit(car, road, sM, 'rear', car.rearTyre),
  );
}

function axleCornerLimit(
  car: TwoAxleCar,
  road: Road,
  sM: number,
  side: 'front' | 'rear',
  tyre: Tyre,
): number {
  const { chassis } = car;
  const curvature = Math.abs(road.curvatureAt(sM));
  const bank = road.bankAt(sM);
  const rest = staticAxleLoadsN(chassis)[side];
  const massN = rest / STANDARD_GRAVITY_MPS2;
  const downPerW = downforceN(car.aero, 1)[side];
  let w = STANDARD_GRAVITY_MPS2 / curvature;
  for (let round = 0; round < (tyre.loadSensitivity === 0 ? 1 : 2 * LOAD_ROUNDS); round++) {
    const load = rest * (1 + (bank * curvature * w) / STANDARD_GRAVITY_MPS2) + downPerW * w;
    const movedN = (massN * curvature * w * chassis.cgHeightM) / car.trackM;
    const mu = car.gripShare * tyre.lateralFriction * axleFrictionFactor(tyre, load, movedN);
    const needPerW = massN * curvature - mu * (massN * bank * curvature + downPerW);
    if (needPerW <= 0) return Number.POSITIVE_INFINITY;
    w = (mu * rest + massN * STANDARD_GRAVITY_MPS2 * bank) / needPerW;
  }
  return w;
}
