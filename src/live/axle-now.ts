import { behindValvePa } from '../car/rear-valve.ts';
import { axleFrictionFactor } from '../car/tyre.ts';
import { STEP_S } from './live-car.ts';
import type { AxleModel, LiveModel } from './live-model.ts';

/** What is asked of the axles at an instant. Scratch: filled in anew for every evaluation. */
export interface Demand {
  speedMps: number;
  /** Factor on the static loads: a bank presses the car down. */
  press: number;
  /** Share of the loads that a bump takes away. */
  unloaded: number;
  transferN: number;
  /** Across the car, after what the bank carries; without its sign. */
  lateralMps2: number;
  level: number;
  /** Share of the brakes' force that reaches the road: the rest slows what turns. */
  toRoad: number;
  /** Braking force of the engine, negative where it drives, and of a hybrid's motor, N. */
  engineN: number;
  motorN: number;
  /** True where a foot on the throttle, or the program for it, takes out of the engine's braking what the tyres do not carry. */
  engineGives: boolean;
}

/** What one axle does at an instant. Scratch. */
export interface AxleNow {
  /** Grip asked for over grip there is. */
  use: number;
  /** Along the road, braking positive, N. */
  forceN: number;
  slipPerS: number;
  /** Heat of the brakes, W. */
  brakeW: number;
}

/** Beyond this a use says nothing more. */
const MOST_USE = 10;
/** Wheels below this speed are as good as at rest, m/s. */
const CRAWL_MPS = 0.1;

/**
 * The force of an axle's tyres and what becomes of its wheels. Up to the limit of the friction ellipse the tyres give
 * what brakes and engine ask for. Beyond it the wheels slow down by (T - F r) / (J omega) from rolling to locked; the
 * force falls from the limit to the sliding share, and with it the lateral force that the axle still carries goes, until
 * the locked tyre slides straight on.
 *
 * @param slip 0 rolling, 1 locked
 * @param throughShare share of the driver's pressure that anti-lock lets through
 * @source sliding friction below the peak: Gillespie, Fundamentals of Vehicle Dynamics, ch. 10; Milliken and Milliken,
 *   Race Car Vehicle Dynamics, ch. 2. Left out: slip up to the peak, and the engine's inertia on driven wheels.
 */
export function actAxle(
  model: LiveModel,
  axle: AxleModel,
  demand: Demand,
  slip: number,
  throughShare: number,
  now: AxleNow,
): void {
  const brakeN = throughShare * discForceN(axle, demand.level);
  const wantedN =
    demand.toRoad * brakeN + axle.driveShare * demand.engineN + axle.motorShare * demand.motorN;
  const lateralN = model.car.chassis.massKg * demand.lateralMps2 * axle.lateralShare;
  const loadN = axleLoadN(axle, demand);
  const grip = loadN * axleFrictionFactor(axle.tyre, loadN, lateralN * model.acrossTransfer);
  const across = lateralN / axle.tyre.lateralFriction;
  // Never more than there is: a wheel that nothing holds spins up again however much the corner asks for.
  const carried = Math.min(across, grip) * (1 - slip);
  const left = Math.sqrt(Math.max(0, grip * grip - carried * carried));
  const mostN = axle.tyre.longitudinalFriction * left * (1 - (1 - axle.slidingShare) * slip * slip);
  const askedN = Math.max(-mostN, demand.engineGives ? Math.min(wantedN, mostN) : wantedN);
  const along = askedN / axle.tyre.longitudinalFriction;
  // Slower wheels take more from the road than brakes and engine ask for until they roll, but what is left of their slip
  // within a step and no more: a force that stayed at the limit beyond that would be no wheel's.
  const crawlMps = Math.max(CRAWL_MPS, demand.speedMps);
  const spinUpN = (slip * crawlMps) / (axle.perInertia * STEP_S);
  const forceN = Math.min(mostN, askedN + spinUpN);
  now.use = Math.min(MOST_USE, Math.sqrt(along * along + across * across) / grip);
  now.forceN = forceN;
  now.slipPerS = ((askedN - forceN) * axle.perInertia) / crawlMps;
  now.brakeW = brakeN * (1 - slip) * demand.speedMps;
}

/** Force of an axle's brakes before anti-lock, as if all of it reached the road, N. */
export function discForceN(axle: AxleModel, level: number): number {
  const pressurePa = behindValvePa(axle.valve, level * axle.pressurePa);
  return axle.forcePerPa * Math.max(0, pressurePa - axle.pushOutPa);
}

/** Never nothing: an axle in the air has no use that could be said. */
function axleLoadN(axle: AxleModel, demand: Demand): number {
  const { speedMps, press, unloaded, transferN } = demand;
  const settled =
    axle.restLoadN * press +
    axle.downforcePerW * speedMps * speedMps +
    axle.transferSign * transferN;
  return Math.max(1, settled * (1 - unloaded));
}
