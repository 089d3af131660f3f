import { type Aero, downforceN, dragN } from '../car/aero.ts';
import { type AxleGrip, frontLimitN, rearLimitN } from '../car/axle-ellipse.ts';
import { type BrakeSplit, type SplitPiece, totalForAxleN } from '../car/brake-split.ts';
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
    const engineN = engineBraking(sM, w);
    const { front, rear } = axleLimitsN(car, road, { sM, w, engineN });
    const brakeForceN = Math.min(front, rear);
    // Where nothing is left for the brakes, the throttle takes out what the axles do not carry of the engine either.
    const carriedN = brakeForceN > 0 ? engineN : carriedEngineN(car, road, { sM, w, engineN });
    return {
      brakeForceN,
      decelerationMps2: (brakeForceN + resistance(sM, w, carriedN)) / chassis.massKg,
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

/** Largest friction-brake force of both axles together that each axle allows, N. */
export function axleLimitsN(car: TwoAxleCar, road: Road, { sM, w, engineN }: Place): Axles {
  const { chassis } = car;
  const loads = loadsN(car, road, sM, w);
  const lateral = lateralForcesN(car, road, sM, w);
  const perNewton = chassis.cgHeightM / wheelbaseM(chassis);
  const split = brakeSplitIn(car);
  const solve = (side: 'front' | 'rear', tyre: Tyre): number => {
    const sign = side === 'front' ? 1 : -1;
    const driven = side === 'front' ? car.frontDriveShare : 1 - car.frontDriveShare;
    const transferN = (lateral[side] * chassis.cgHeightM) / car.trackM;
    let force = 0;
    for (let round = 0; round < (tyre.loadSensitivity === 0 ? 1 : LOAD_ROUNDS); round++) {
      const load = loads[side] + sign * (force + engineN) * perNewton;
      const factor = car.gripShare * axleFrictionFactor(tyre, load, transferN);
      force = limitOnSplitN(chassis, split, side, {
        mu: tyre.longitudinalFriction * factor,
        loadN: loads[side],
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

/** How a car's brake force divides. */
export function brakeSplitIn({ brakeSplit, frontBrakeShare }: TwoAxleCar): BrakeSplit {
  return brakeSplit ?? [{ fromN: 0, share: frontBrakeShare, offsetN: 0 }];
}

/** The limit of an axle on the piece of the split where it falls; an offset acts on the axle as an engine does. */
function limitOnSplitN(
  chassis: Chassis,
  split: BrakeSplit,
  side: 'front' | 'rear',
  axle: Omit<AxleGrip, 'brakeShare'> & { readonly engineN: number },
): number {
  const isFront = side === 'front';
  let force = 0;
  for (let i = split.length - 1; i >= 0; i--) {
    const { fromN, share, offsetN } = split[i] as SplitPiece;
    const onAxle = {
      ...axle,
      brakeShare: isFront ? share : 1 - share,
      engineN: axle.engineN + (isFront ? offsetN : -offsetN),
    };
    force = isFront ? frontLimitN(chassis, onAxle) : rearLimitN(chassis, onAxle);
    if (force >= fromN) return Math.min(force, split[i + 1]?.fromN ?? force);
  }
  return force;
}

/** How much of an engine's braking the axles carry without the brakes, N. */
function carriedEngineN(car: TwoAxleCar, road: Road, place: Place): number {
  if (place.engineN <= 0) return place.engineN;
  const { brakeSplit: _, ...unsplit } = car;
  const dragged = { ...unsplit, frontBrakeShare: car.frontDriveShare };
  const { front, rear } = axleLimitsN(dragged, road, { ...place, engineN: 0 });
  return Math.min(place.engineN, front, rear);
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
  const loads = loadsN(car, road, place.sM, place.w);
  const lateral = lateralForcesN(car, road, place.sM, place.w);
  const split = brakeSplitIn(car);
  const limit = (side: 'front' | 'rear', tyre: Tyre, driven: number): number => {
    const load = Math.max(0, loads[side] + (side === 'front' ? 1 : -1) * place.transferN);
    const moved = (lateral[side] * car.chassis.cgHeightM) / car.trackM;
    const mu = car.gripShare * tyre.longitudinalFriction * axleFrictionFactor(tyre, load, moved);
    const across = (lateral[side] * tyre.longitudinalFriction) / tyre.lateralFriction;
    const along = Math.sqrt(Math.max(0, (mu * load) ** 2 - across ** 2));
    return totalForAxleN(split, side, Math.max(0, along - driven * place.engineN));
  };
  return Math.min(
    limit('front', car.frontTyre, car.frontDriveShare),
    limit('rear', car.rearTyre, 1 - car.frontDriveShare),
  );
}

/** No car here is faster, m^2/s^2: a corner that is still carried at this speed sets no limit. */
const FASTEST_SQUARED = 150 ** 2;
const SCAN_RATIO = 1.4;
/** Share of the flat, unloaded limit at which the search begins: nothing but a steep adverse bank gets below it. */
const SURELY_CARRIED = 0.5;
const CLOSE = 1e-13;
const MOST_HALVINGS = 60;

/**
 * Largest squared speed up to which both axles carry the corner without braking: the first speed, coming from below,
 * at which the lateral force an axle needs reaches what its load and its load-dependent friction give. Infinity on a
 * straight and where downforce outgrows the need.
 */
function cornerLimitSquared(car: TwoAxleCar, road: Road, sM: number): number {
  if (road.curvatureAt(sM) === 0) return Number.POSITIVE_INFINITY;
  const spare = (w: number): number => spareLateralN(car, road, sM, w);
  const mu = Math.min(car.frontTyre.lateralFriction, car.rearTyre.lateralFriction) * car.gripShare;
  const flat = (mu * STANDARD_GRAVITY_MPS2) / Math.abs(road.curvatureAt(sM));
  let low = SURELY_CARRIED * flat;
  if (spare(low) <= 0) low = 0;
  let high = Math.max(low * SCAN_RATIO, flat * 1e-3);
  while (spare(high) > 0) {
    if (high > FASTEST_SQUARED) return Number.POSITIVE_INFINITY;
    low = high;
    high *= SCAN_RATIO;
  }
  return rootBetween(spare, low, high);
}

/** Regula falsi with the Illinois halving: the sign changes from plus to minus between the ends. */
function rootBetween(f: (x: number) => number, from: number, to: number): number {
  let [low, high, fLow, fHigh] = [from, to, f(from), f(to)];
  let last = 0;
  for (let i = 0; i < MOST_HALVINGS && high - low > CLOSE * high; i++) {
    const middle = (low * fHigh - high * fLow) / (fHigh - fLow);
    const value = f(middle);
    if (value === 0) return middle;
    if (value > 0) {
      [low, fLow] = [middle, value];
      if (last > 0) fHigh /= 2;
    } else {
      [high, fHigh] = [middle, value];
      if (last < 0) fLow /= 2;
    }
    last = value;
    if (Math.abs(value) <= CLOSE * Math.abs(f(from))) return middle;
  }
  return low;
}

/** Lateral force that the worse axle still has to spare, N; negative where it slides. */
function spareLateralN(car: TwoAxleCar, road: Road, sM: number, w: number): number {
  const loads = loadsN(car, road, sM, w);
  const lateral = lateralForcesN(car, road, sM, w);
  const spare = (side: 'front' | 'rear', tyre: Tyre): number => {
    const movedN = (lateral[side] * car.chassis.cgHeightM) / car.trackM;
    const mu = car.gripShare * tyre.lateralFriction * axleFrictionFactor(tyre, loads[side], movedN);
    return mu * loads[side] - lateral[side];
  };
  return Math.min(spare('front', car.frontTyre), spare('rear', car.rearTyre));
}
