import { downforceN, dragN } from './aero.ts';
import { brakeForcesN } from './brake-force.ts';
import { linePressuresPa } from './brakes.ts';
import type { Car } from './car.ts';
import { type Axles, staticAxleLoadsN, weightN, wheelbaseM } from './chassis.ts';
import { frictionFactor } from './tyre.ts';

/** The hardest braking on a flat straight at one speed, clutch open, without anti-lock and motor. */
export interface StraightLimit {
  readonly speedMps: number;
  readonly pedalForceN: number;
  readonly pressuresPa: Axles;
  /** At the discs: rotating parts take their share on the way to the road. */
  readonly brakeForcesN: Axles;
  /** Friction brakes, drag and rolling resistance together, in g. */
  readonly decelerationG: number;
  /** Share of the friction-brake force on the front axle. */
  readonly frontShare: number;
  /**
   * The share with which both axles would lock at once, and the car brake hardest: (b + mu h) / L without air forces and
   * with the same friction mu on both axles. @source Gillespie, Fundamentals of Vehicle Dynamics, ch. 3
   */
  readonly idealFrontShare: number;
  readonly locksFirst: 'front' | 'rear';
  /** Braking rate, in g, between this limit and the lock of the other axle; null where that never locks. */
  readonly marginG: number | null;
}

/** No foot gets here; an axle that rolls on at this force never locks. */
const MOST_PEDAL_N = 20_000;
const HALVINGS = 60;
const SETTLING_ROUNDS = 20;

/** Where the first axle is about to lock, with load transfer, downforce, load sensitivity, push-out and rear valve. */
export function straightLimit(car: Car, speedMps: number): StraightLimit {
  const locks = {
    front: lockPedalN(car, speedMps, 'front'),
    rear: lockPedalN(car, speedMps, 'rear'),
  };
  const locksFirst = locks.front <= locks.rear ? 'front' : 'rear';
  const pedalForceN = Math.min(locks.front, locks.rear, MOST_PEDAL_N);
  const forces = brakeForcesN(car.brakes, pedalForceN);
  const slowingN = sum(forces) + resistanceN(car, speedMps);
  return {
    speedMps,
    pedalForceN,
    pressuresPa: linePressuresPa(car.brakes, pedalForceN),
    brakeForcesN: forces,
    decelerationG: slowingN / weightN(car.chassis) / (1 + car.rotatingShare),
    frontShare: forces.front / sum(forces),
    idealFrontShare: idealFrontShare(car, speedMps),
    locksFirst,
    marginG: marginG(car, pedalForceN, Math.max(locks.front, locks.rear)),
  };
}

/** Load sensitivity lets the friction of both depend a little on the load that their braking moves: it settles at once. */
function idealFrontShare(car: Car, speedMps: number): number {
  let carried = carriedN(car, speedMps, 0);
  for (let round = 0; round < SETTLING_ROUNDS; round++)
    carried = carriedN(car, speedMps, sum(carried));
  return carried.front / sum(carried);
}

function marginG(
  { brakes, chassis, rotatingShare }: Car,
  firstN: number,
  secondN: number,
): number | null {
  if (!Number.isFinite(secondN)) return null;
  const between = sum(brakeForcesN(brakes, secondN)) - sum(brakeForcesN(brakes, firstN));
  return between / weightN(chassis) / (1 + rotatingShare);
}

/** Pedal force at which an axle uses all of its friction, N; Infinity where it never does. */
function lockPedalN(car: Car, speedMps: number, axle: 'front' | 'rear'): number {
  let low = 0;
  let high = MOST_PEDAL_N;
  if (straightUse(car, speedMps, high)[axle] < 1) return Number.POSITIVE_INFINITY;
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    if (straightUse(car, speedMps, middle)[axle] < 1) low = middle;
    else high = middle;
  }
  return high;
}

/** Share of its friction that each axle uses on a flat straight at a pedal force; 1 is about to lock. */
export function straightUse(car: Car, speedMps: number, pedalForceN: number): Axles {
  const forces = roadForcesN(car, speedMps, brakeForcesN(car.brakes, pedalForceN));
  const carried = carriedN(car, speedMps, sum(forces));
  const use = (axle: 'front' | 'rear'): number =>
    carried[axle] > 0 ? forces[axle] / carried[axle] : Number.POSITIVE_INFINITY;
  return { front: use('front'), rear: use('rear') };
}

/** The friction that each axle has while the road slows the car by a force, N; 0 for one in the air. */
function carriedN(car: Car, speedMps: number, roadForceN: number): Axles {
  const rest = staticAxleLoadsN(car.chassis);
  const down = downforceN(car.aero, speedMps);
  const transferN = (roadForceN * car.chassis.cgHeightM) / wheelbaseM(car.chassis);
  const under = (axle: 'front' | 'rear', loadN: number): number => {
    const tyre = car.tyres[axle];
    return tyre.longitudinalFriction * frictionFactor(tyre, loadN / 2) * Math.max(0, loadN);
  };
  return {
    front: under('front', rest.front + down.front + transferN),
    rear: under('rear', rest.rear + down.rear - transferN),
  };
}

/** Drag and rolling resistance, N. */
function resistanceN(car: Car, speedMps: number): number {
  const down = downforceN(car.aero, speedMps);
  const pressingN = weightN(car.chassis) + down.front + down.rear;
  return dragN(car.aero, speedMps) + car.rollingResistance * pressingN;
}

/**
 * What of the brakes' force reaches the road, N: B - k m D, with m (1 + k) D = B + R, the rotating parts sharing the
 * axles as the brakes do.
 */
function roadForcesN(car: Car, speedMps: number, forces: Axles): Axles {
  const k = car.rotatingShare;
  const brakesN = sum(forces);
  if (k === 0 || brakesN === 0) return forces;
  const roadN = Math.max(0, (brakesN - k * resistanceN(car, speedMps)) / (1 + k));
  return { front: (forces.front * roadN) / brakesN, rear: (forces.rear * roadN) / brakesN };
}

function sum({ front, rear }: Axles): number {
  return front + rear;
}
