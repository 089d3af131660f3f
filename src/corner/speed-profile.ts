import { type BrakingModel, JUST_ON_N, type Limiter } from './braking-model.ts';
import { travelTimeS } from './travel-time.ts';

/** One point of a speed profile. */
export interface ProfilePoint {
  /** Along the path, m. */
  readonly sM: number;
  readonly speedMps: number;
  readonly decelerationMps2: number;
  readonly brakeForceN: number;
  readonly limiter: Limiter;
  /** Seconds to the slowest point. */
  readonly toSlowestS: number;
}

export interface BackwardPass {
  /** Start of the integration: the slowest point, m along the path. */
  readonly slowestM: number;
  /** Where to stop, m along the path. */
  readonly fromM: number;
  /** Places where the curvature or its slope jumps; steps end there. */
  readonly jointsM: readonly number[];
  /** Longest step, m. */
  readonly stepM: number;
  /** Speed above which nobody needs to know the rest, m/s; Infinity goes all the way to `fromM`. */
  readonly stopAboveMps: number;
  /** Fastest the brake force may fall, N/s: what a foot can release. Infinity asks for the pure limit. */
  readonly releaseNps: number;
  /** Beyond these places the brake force stays below its bound: what a foot that only eases can still have there. */
  readonly bounds?: readonly ForceBound[];
}

export interface ForceBound {
  readonly fromM: number;
  readonly mostN: number;
}

export const DEFAULT_STEP_M = 1;
/** First distance from the slowest point at which a square-root release law is followed, m. */
const FIRST_M = 1e-6;

/**
 * Integrates dw/ds = -2 D back from the slowest point at the limit of grip, w = v^2, by the classical Runge-Kutta
 * method, never above the speed at which the corner can be driven at all. Steps grow with the square root of the
 * distance near the slowest point, where the release law may have no finite slope.
 *
 * @returns points in driving order, the slowest point last
 * @source backward pass after Kapania, Subosits and Gerdes, ASME J. Dyn. Sys. Meas. Control 138(9) 091005, 2016
 */
export function brakeToSlowest(model: BrakingModel, pass: BackwardPass): ProfilePoint[] {
  const end = model.cornerLimit(pass.slowestM);
  // A foot is off the brake where the speed is least; the pure limit of a front-limited car is not.
  const start = Number.isFinite(pass.releaseNps) ? 0 : Number.POSITIVE_INFINITY;
  const points: ProfilePoint[] = [limitPoint(model, pass.slowestM, end, start)];
  for (const step of steps(pass)) {
    const later = points[points.length - 1] as ProfilePoint;
    points.push(pointBefore(model, pass, later, step));
    if (later.speedMps > pass.stopAboveMps) break;
  }
  return points.reverse();
}

/** The point at the far end of a step back, with the time it takes to the slowest point. */
function pointBefore(
  model: BrakingModel,
  pass: BackwardPass,
  later: ProfilePoint,
  [nearM, farM]: readonly [number, number],
): ProfilePoint {
  const sM = pass.slowestM - farM;
  const lengthM = farM - nearM;
  const cap = footCap(later, pass.releaseNps, boundAt(pass, sM));
  const reached = stepBack(model, pass, later, [nearM, farM], cap);
  const most = model.cornerLimit(sM);
  const point =
    reached <= most
      ? limitPoint(model, sM, reached, cap(lengthM, reached))
      : ridingPoint(model, sM, most, later);
  return { ...point, toSlowestS: later.toSlowestS + travelTimeS(lengthM, point, later) };
}

/** Distances before the slowest point between which to step, growing from nothing, ending at every joint. */
function* steps({
  slowestM,
  fromM,
  jointsM,
  stepM,
}: BackwardPass): Generator<readonly [number, number]> {
  const stops = [...new Set([...jointsM, fromM])]
    .map((joint) => slowestM - joint)
    .filter((distance) => distance > 0 && distance <= slowestM - fromM)
    .sort((a, b) => a - b);
  const first = stops[0] ?? 0;
  const roots = Math.max(40, Math.ceil((2 * first) / stepM));
  let near = 0;
  for (let i = 1; i <= roots; i++) {
    const far = first * (i / roots) ** 2;
    yield [near, far];
    near = far;
  }
  for (const stop of stops.slice(1)) {
    const count = Math.max(1, Math.ceil((stop - near) / stepM));
    const start = near;
    for (let i = 1; i <= count; i++) {
      const far = start + ((stop - start) * i) / count;
      yield [near, far];
      near = far;
    }
  }
}

/** Brake force after a stretch before the later point at a squared speed, N. */
type Cap = (lengthM: number, w: number) => number;

/** Brake force a foot can still release from here, within a bound: the later force plus what it sheds in the time between. */
function footCap(later: ProfilePoint, releaseNps: number, boundN: number): Cap {
  if (!Number.isFinite(releaseNps)) return () => boundN;
  return (lengthM, w) => {
    const shedN = (releaseNps * 2 * lengthM) / (later.speedMps + Math.sqrt(w));
    return Math.min(boundN, later.brakeForceN + shedN);
  };
}

/** The least bound of a place, N. */
function boundAt({ bounds = [] }: BackwardPass, sM: number): number {
  let leastN = Number.POSITIVE_INFINITY;
  for (const { fromM, mostN } of bounds) if (sM >= fromM) leastN = Math.min(leastN, mostN);
  return leastN;
}

function stepBack(
  model: BrakingModel,
  { slowestM }: BackwardPass,
  later: ProfilePoint,
  [nearM, farM]: readonly [number, number],
  cap: Cap,
): number {
  const w = later.speedMps ** 2;
  const law = nearM === 0 ? model.releaseLaw(slowestM) : null;
  if (law !== null) return w + 2 * lawIntegral(law, farM);
  const h = farM - nearM;
  const slope = (beforeM: number, at: number): number =>
    2 * model.limit(slowestM - beforeM, at, cap(beforeM - nearM, at)).decelerationMps2;
  // At the limit the later point knows its own slope; riding the corner's limit it may brake harder than it did.
  const k1 = later.limiter === 'corner' ? slope(nearM, w) : 2 * later.decelerationMps2;
  const k2 = slope(nearM + h / 2, w + (h / 2) * k1);
  const k3 = slope(nearM + h / 2, w + (h / 2) * k2);
  const k4 = slope(farM, w + h * k3);
  return w + (h / 6) * (k1 + 2 * k2 + 2 * k3 + k4);
}

/** Integral of the release law from the slowest point, Simpson in the square root of the distance. */
function lawIntegral(law: (beforeM: number) => number, farM: number): number {
  const r = Math.sqrt(Math.max(farM, FIRST_M));
  const f = (root: number): number => 2 * root * law(root * root);
  return (r / 6) * (f(0) + 4 * f(r / 2) + f(r));
}

/** A point at the limit, of grip or of what a foot can still release. */
function limitPoint(model: BrakingModel, sM: number, w: number, capN: number): ProfilePoint {
  const { brakeForceN, decelerationMps2, limiter } = model.limit(sM, w, capN);
  return { sM, speedMps: Math.sqrt(w), decelerationMps2, brakeForceN, limiter, toSlowestS: 0 };
}

/** A point at which the corner itself limits the speed: the brake gives only what that speed's change asks for. */
function ridingPoint(
  model: BrakingModel,
  sM: number,
  w: number,
  later: ProfilePoint,
): ProfilePoint {
  const decelerationMps2 = (w - later.speedMps ** 2) / (2 * (later.sM - sM));
  const coasting = model.decelerationMps2(sM, w, JUST_ON_N);
  const perNewton = model.decelerationMps2(sM, w, 1) - coasting;
  return {
    sM,
    speedMps: Math.sqrt(w),
    brakeForceN: Math.max(0, (decelerationMps2 - coasting) / perNewton),
    decelerationMps2,
    limiter: 'corner',
    toSlowestS: 0,
  };
}
