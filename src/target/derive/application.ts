import { wheelbaseM } from '../../car/chassis.ts';
import type { BrakingModel } from '../../corner/braking-model.ts';
import type { ProfileCurve } from '../../corner/profile-curve.ts';
import { axleLimitsUnderLoadN, type Road, type TwoAxleCar } from '../../corner/two-axle.ts';

/** One instant of the first application. */
export interface ApplicationPoint {
  readonly timeS: number;
  readonly sM: number;
  readonly speedMps: number;
  readonly decelerationMps2: number;
  readonly brakeForceN: number;
}

/** What shapes the application beside the grip. */
export interface ApplicationLimits {
  readonly approachSpeedMps: number;
  /** From nothing to the limit, s. */
  readonly riseS: number;
  /**
   * Lag of the load that pitch brings to the front axle; null for a model without axles. First order, with the time
   * constant of the pitch frequency: the overshoot of a real chassis is left out.
   */
  readonly pitch: { readonly car: TwoAxleCar; readonly road: Road; readonly hz: number } | null;
}

const STEP_S = 0.004;
/** Share of the limit at which the application has caught up with it: the load always lags a little on falling downforce. */
const CAUGHT_UP = 0.97;
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
  let state = { timeS: 0, sM: brakePointM, speedMps: limits.approachSpeedMps, transferN: 0 };
  while (state.timeS <= LONGEST_S) {
    const { timeS, sM, speedMps } = state;
    const w = speedMps * speedMps;
    const wanted = model.limit(sM, w).brakeForceN;
    const brakeForceN = Math.min(
      wanted * minimumJerk(timeS / limits.riseS),
      carried(limits, state),
    );
    const decelerationMps2 = model.decelerationMps2(sM, w, brakeForceN);
    points.push({ timeS, sM, speedMps, decelerationMps2, brakeForceN });
    if (timeS >= limits.riseS && brakeForceN >= CAUGHT_UP * wanted) break;
    state = {
      timeS: timeS + STEP_S,
      sM: sM + speedMps * STEP_S - 0.5 * decelerationMps2 * STEP_S ** 2,
      speedMps: Math.max(0.1, speedMps - decelerationMps2 * STEP_S),
      transferN: lagged(limits, state.transferN, brakeForceN),
    };
  }
  return points;
}

/**
 * The brake point from which the application meets the profile.
 * @returns how much too fast the car still is, m/s, where even the start of the zone is too late
 */
export function findBrakePoint(
  model: BrakingModel,
  limits: ApplicationLimits,
  profile: ProfileCurve,
): { readonly brakePointM: number; readonly tooFastMps: number } {
  const excess = (brakePointM: number): number => {
    const end = applyBrakes(model, limits, brakePointM).at(-1) as ApplicationPoint;
    return end.speedMps - profile.speedMps(Math.min(end.sM, profile.toM));
  };
  const atStart = excess(profile.fromM);
  if (atStart > 0) return { brakePointM: profile.fromM, tooFastMps: atStart };
  return { brakePointM: regulaFalsi(excess, profile.fromM, profile.toM), tooFastMps: 0 };
}

const TOLERANCE_M = 1e-6;

/** Root of a rising function by the Illinois variant of the false position. @source Dowell and Jarratt, BIT 11 (1971) */
function regulaFalsi(f: (x: number) => number, from: number, to: number): number {
  let [a, b] = [from, to];
  let [fa, fb] = [f(a), f(b)];
  for (let round = 0; round < 60 && b - a > TOLERANCE_M; round++) {
    const x = (a * fb - b * fa) / (fb - fa);
    const fx = f(x);
    if (Math.abs(fx) < 1e-9) return x;
    if (fx < 0) {
      [a, fa, fb] = [x, fx, fb / 2];
    } else {
      [b, fb, fa] = [x, fx, fa / 2];
    }
  }
  return a;
}

interface State {
  readonly sM: number;
  readonly speedMps: number;
  readonly transferN: number;
}

function carried({ pitch }: ApplicationLimits, { sM, speedMps, transferN }: State): number {
  if (pitch === null) return Number.POSITIVE_INFINITY;
  return axleLimitsUnderLoadN(pitch.car, pitch.road, { sM, w: speedMps ** 2, transferN });
}

function lagged({ pitch }: ApplicationLimits, transferN: number, brakeForceN: number): number {
  if (pitch === null) return 0;
  const { chassis } = pitch.car;
  const settled = (brakeForceN * chassis.cgHeightM) / wheelbaseM(chassis);
  return transferN + (settled - transferN) * (1 - Math.exp(-2 * Math.PI * pitch.hz * STEP_S));
}

/** Minimum-jerk rise from 0 to 1 over 0..1. @source Flash and Hogan, Journal of Neuroscience 5 (1985) */
function minimumJerk(share: number): number {
  if (share >= 1) return 1;
  return share ** 3 * (10 - 15 * share + 6 * share ** 2);
}
