import { wheelbaseM } from '../../car/chassis.ts';
import type { BrakingModel } from '../../corner/braking-model.ts';
import type { ProfileCurve } from '../../corner/profile-curve.ts';
import {
  axleLimitsUnderLoadN,
  type EngineBraking,
  type Road,
  type TwoAxleCar,
} from '../../corner/two-axle.ts';

/** One instant of the first application. */
export interface ApplicationPoint {
  readonly timeS: number;
  readonly sM: number;
  readonly speedMps: number;
  readonly decelerationMps2: number;
  readonly brakeForceN: number;
  /** Load that has arrived on the front axle so far, N. */
  readonly transferN: number;
  /** What holds the push back: how fast the foot is, or load that is still on its way. */
  readonly limiter: 'foot' | 'load';
}

/** What shapes the application beside the grip. */
interface ApplicationLimits {
  readonly approachSpeedMps: number;
  /** From nothing to the limit, s. */
  readonly riseS: number;
  /**
   * Lag of the load that pitch brings to the front axle; null for a model without axles. First order, with the time
   * constant of the pitch frequency: the overshoot of a real chassis is left out.
   */
  readonly pitch: Pitch | null;
}

export interface Pitch {
  readonly car: TwoAxleCar;
  readonly road: Road;
  readonly engineBraking: EngineBraking;
  readonly hz: number;
}

const STEP_S = 0.004;
/**
 * Share of the limit at which the application has caught up with it. The load gets there by a first-order lag, which has no
 * end; what is still missing is the most by which the limit is exceeded from there on.
 */
export const CAUGHT_UP = 0.99;
const LONGEST_S = 2;

/**
 * The first application from a brake point: the force follows a minimum-jerk rise to what the grip allows, and never
 * exceeds what the axles carry while the load is still on its way forward.
 *
 * @returns points 4 ms apart from the brake point to where the limit is reached
 */
export function applyBrakes(
  model: BrakingModel,
  limits: ApplicationLimits,
  brakePointM: number,
): ApplicationPoint[] {
  const points: ApplicationPoint[] = [];
  let state: State = {
    timeS: 0,
    sM: brakePointM,
    speedMps: limits.approachSpeedMps,
    transferN: 0,
  };
  while (state.timeS <= LONGEST_S) {
    const braking = brakingAt(model, limits, state);
    points.push(applicationPoint(state, braking));
    if (state.timeS >= limits.riseS && braking.brakeForceN >= CAUGHT_UP * braking.wantedN) break;
    const middle = after(limits, state, state, braking, STEP_S / 2);
    state = after(limits, state, middle, brakingAt(model, limits, middle), STEP_S);
  }
  return points;
}

interface State {
  readonly timeS: number;
  readonly sM: number;
  readonly speedMps: number;
  /** Load that has arrived on the front axle so far. */
  readonly transferN: number;
}

interface Braking extends Pick<ApplicationPoint, 'brakeForceN' | 'decelerationMps2' | 'limiter'> {
  /** What the grip would allow with all of the load transfer there. */
  readonly wantedN: number;
}

function applicationPoint(
  { timeS, sM, speedMps, transferN }: State,
  { brakeForceN, decelerationMps2, limiter }: Braking,
): ApplicationPoint {
  return { timeS, sM, speedMps, decelerationMps2, brakeForceN, transferN, limiter };
}

function brakingAt(model: BrakingModel, limits: ApplicationLimits, state: State): Braking {
  const w = state.speedMps ** 2;
  const wantedN = model.limit(state.sM, w).brakeForceN;
  const pushN = wantedN * minimumJerk(state.timeS / limits.riseS);
  const carriedN = carried(limits, state);
  const brakeForceN = Math.min(pushN, carriedN);
  return {
    brakeForceN,
    limiter: carriedN < pushN ? 'load' : 'foot',
    wantedN,
    decelerationMps2: model.decelerationMps2(state.sM, w, brakeForceN),
  };
}

/** A step of the explicit midpoint rule: from `from`, with the rates of `rate`; the load follows exactly what it settles to. */
function after(
  limits: ApplicationLimits,
  from: State,
  rate: State,
  { brakeForceN, decelerationMps2 }: Braking,
  stepS: number,
): State {
  const settled = settledN(limits, rate, brakeForceN);
  return {
    timeS: from.timeS + stepS,
    sM: from.sM + rate.speedMps * stepS,
    speedMps: Math.max(0.1, from.speedMps - decelerationMps2 * stepS),
    transferN: settled + (from.transferN - settled) * Math.exp(-pitchRate(limits) * stepS),
  };
}

const CLOSE_M = 1e-6;
const MOST_ROUNDS = 20;

/**
 * The brake point from which the application meets the profile. What an application takes hardly depends on where it
 * starts (on a flat straight not at all), so the place is moved until its end lies on the profile.
 *
 * @param earliestM start of the zone: no brake point lies before it
 * @returns the application from there, and how much too fast the car still is, m/s, where even the start of the zone is
 *   too late
 */
export function findBrakePoint(
  model: BrakingModel,
  limits: ApplicationLimits,
  profile: ProfileCurve,
  earliestM: number,
): FoundBrakePoint {
  let brakePointM = Math.max(earliestM, profile.placeOf(limits.approachSpeedMps));
  let application = applyBrakes(model, limits, brakePointM);
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const end = application[application.length - 1] as ApplicationPoint;
    const wanted = brakePointM + profile.placeOf(end.speedMps) - end.sM;
    if (wanted < earliestM && brakePointM === earliestM) {
      const tooFastMps = Math.max(0, end.speedMps - profile.speedMps(end.sM));
      return { application, brakePointM, tooFastMps };
    }
    if (Math.abs(wanted - brakePointM) < CLOSE_M) break;
    brakePointM = Math.max(earliestM, wanted);
    application = applyBrakes(model, limits, brakePointM);
  }
  return { application, brakePointM, tooFastMps: 0 };
}

interface FoundBrakePoint {
  readonly application: readonly ApplicationPoint[];
  readonly brakePointM: number;
  readonly tooFastMps: number;
}

function carried({ pitch }: ApplicationLimits, { sM, speedMps, transferN }: State): number {
  if (pitch === null) return Number.POSITIVE_INFINITY;
  const w = speedMps ** 2;
  const engineN = pitch.engineBraking(sM, w);
  return axleLimitsUnderLoadN(pitch.car, pitch.road, { sM, w, engineN, transferN });
}

/** Load transfer once the pitch has settled, N: of brakes and engine together. */
function settledN({ pitch }: ApplicationLimits, at: State, brakeForceN: number): number {
  if (pitch === null) return 0;
  const { chassis } = pitch.car;
  const engineN = pitch.engineBraking(at.sM, at.speedMps ** 2);
  return ((brakeForceN + engineN) * chassis.cgHeightM) / wheelbaseM(chassis);
}

function pitchRate({ pitch }: ApplicationLimits): number {
  return pitch === null ? 0 : 2 * Math.PI * pitch.hz;
}

/** Minimum-jerk rise from 0 to 1 over 0..1. @source Flash and Hogan, Journal of Neuroscience 5 (1985) */
function minimumJerk(share: number): number {
  if (share >= 1) return 1;
  return share ** 3 * (10 - 15 * share + 6 * share ** 2);
}
