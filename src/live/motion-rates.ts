import { dragN } from '../car/aero.ts';
import { STANDARD_GRAVITY_MPS2 } from '../units.ts';
import { type AxleNow, actAxle, type Demand, discForceN } from './axle-now.ts';
import { bumpLossAt } from './bump-loss.ts';
import { engineForceN, motorForceN, type Transmission } from './engine-force.ts';
import type { LiveModel } from './live-model.ts';
import type { Motion } from './motion.ts';

/** What the driver asks of the car during one step. Scratch. */
export interface Asked {
  /** Brake, 0..1. */
  level: number;
  throttle: number;
  clutch: number;
  /** At the steering wheel, left positive; null follows the rail. */
  steeringRad: number | null;
  /** See `Demand`. */
  engineGives: boolean;
  /** Share of the driver's pressure that anti-lock lets through. */
  frontThrough: number;
  rearThrough: number;
}

/** The rates of an instant and what else is known of it. Scratch. */
export interface Rates extends Motion {
  /** Positive to the left. */
  accelYMps2: number;
  frontUse: number;
  rearUse: number;
  readonly demand: Demand;
  readonly axle: AxleNow;
}

export function newRates(): Rates {
  return {
    sM: 0,
    speedMps: 0,
    transferN: 0,
    frontSlip: 0,
    rearSlip: 0,
    frontWorkJ: 0,
    rearWorkJ: 0,
    accelYMps2: 0,
    frontUse: 0,
    rearUse: 0,
    demand: {
      speedMps: 0,
      press: 1,
      unloaded: 0,
      transferN: 0,
      lateralMps2: 0,
      level: 0,
      toRoad: 1,
      engineN: 0,
      motorN: 0,
      engineGives: false,
    },
    axle: { use: 0, forceN: 0, slipPerS: 0, brakeW: 0 },
  };
}

/**
 * The equations of motion of the two-axle car on its rail: brakes, engine, drag, rolling resistance and slope slow it, load
 * moves forward with a first-order lag, and the axles give what their ellipses leave beside the lateral force asked for.
 */
export function ratesAt(
  model: LiveModel,
  gears: Transmission,
  asked: Asked,
  at: Motion,
  rates: Rates,
): void {
  const { car } = model;
  const { demand, axle } = rates;
  setDemand(model, gears, asked, at, rates);
  const othersN = resistanceN(model, demand, at);
  demand.toRoad = toRoadShare(model, asked, demand, othersN);
  actAxle(model, model.front, demand, at.frontSlip, asked.frontThrough, axle);
  let tyresN = axle.forceN;
  rates.frontUse = axle.use;
  rates.frontSlip = axle.slipPerS;
  rates.frontWorkJ = axle.brakeW;
  actAxle(model, model.rear, demand, at.rearSlip, asked.rearThrough, axle);
  tyresN += axle.forceN;
  rates.rearUse = axle.use;
  rates.rearSlip = axle.slipPerS;
  rates.rearWorkJ = axle.brakeW;
  const slowingN = tyresN + othersN;
  rates.sM = at.speedMps;
  rates.speedMps = -slowingN / car.chassis.massKg;
  rates.transferN = (tyresN * model.alongTransfer - at.transferN) * model.pitchRate;
}

/** Drag, rolling resistance and slope, N. */
function resistanceN({ car, corner, front, rear }: LiveModel, demand: Demand, at: Motion): number {
  const w = at.speedMps * at.speedMps;
  const restN = (front.restLoadN + rear.restLoadN) * demand.press;
  const downN = (front.downforcePerW + rear.downforcePerW) * w;
  const weightN = car.chassis.massKg * STANDARD_GRAVITY_MPS2;
  return (
    dragN(car.aero, at.speedMps) +
    car.rollingResistance * (restN + downN) +
    weightN * corner.slopeAt(at.sM)
  );
}

/** As on the target: of the force B of the brakes k m D slows what turns, with m (1 + k) D = B + R while the wheels roll. */
function toRoadShare(
  { car, front, rear }: LiveModel,
  asked: Asked,
  demand: Demand,
  othersN: number,
): number {
  const k = car.rotatingShare;
  const brakesN =
    asked.frontThrough * discForceN(front, demand.level) +
    asked.rearThrough * discForceN(rear, demand.level);
  if (brakesN <= 0) return 1;
  const againstN = othersN + demand.engineN + demand.motorN;
  return Math.max(0, (1 - (k * againstN) / brakesN) / (1 + k));
}

function setDemand(
  model: LiveModel,
  gears: Transmission,
  asked: Asked,
  at: Motion,
  rates: Rates,
): void {
  const { car, corner } = model;
  const { demand } = rates;
  const w = at.speedMps * at.speedMps;
  const rail = corner.path.curvatureAt(at.sM);
  const curvature = askedCurvature(model, asked.steeringRad, w, rail);
  const bank = corner.bankAt(at.sM);
  demand.speedMps = at.speedMps;
  demand.press = 1 + (bank * Math.abs(rail) * w) / STANDARD_GRAVITY_MPS2;
  demand.unloaded = bumpLossAt(corner.bumps, at.sM);
  demand.transferN = at.transferN;
  demand.lateralMps2 = Math.abs(Math.abs(curvature) * w - STANDARD_GRAVITY_MPS2 * bank);
  demand.level = asked.level;
  demand.engineN = engineForceN(car, gears, asked, at.speedMps);
  demand.motorN = motorForceN(car, asked.level, at.speedMps);
  demand.engineGives = asked.engineGives;
  rates.accelYMps2 = curvature * w;
}

/** The curvature that the front wheels ask for at a squared speed: angle over wheelbase and understeer. */
function askedCurvature(
  { car, wheelbaseM }: LiveModel,
  steeringRad: number | null,
  w: number,
  rail: number,
): number {
  if (steeringRad === null) return rail;
  return steeringRad / car.steeringRatio / (wheelbaseM + car.understeerRadpMps2 * w);
}
