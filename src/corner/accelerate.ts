import type { DriveModel } from './drive-model.ts';
import { travelTimeS } from './travel-time.ts';

/** One point of an acceleration. */
export interface DrivePoint {
  /** Along the path, m. */
  readonly sM: number;
  /** From the start of the pass, s. */
  readonly timeS: number;
  readonly speedMps: number;
  readonly accelerationMps2: number;
  /** Null during an upshift. */
  readonly gear: number | null;
}

export interface Upshift {
  readonly atM: number;
  readonly fromGear: number;
  readonly toGear: number;
  readonly speedMps: number;
}

export interface ForwardPass {
  readonly fromM: number;
  readonly fromMps: number;
  readonly gear: number;
  readonly toM: number;
  /** Places at which steps end, m: where the curvature jumps, or where somebody reads a time. */
  readonly jointsM: readonly number[];
  /** Longest step, m. */
  readonly stepM: number;
}

interface DrivenStretch {
  /** In driving order, the first at the start and the last at the end of the pass. */
  readonly points: readonly DrivePoint[];
  readonly upshifts: readonly Upshift[];
}

/** Steps in time that an upshift is cut into. */
const SHIFT_STEPS = 4;
const HALVINGS = 48;

/**
 * Full throttle from a place on: integrates dw/ds = 2 a, w = v^2, by the classical Runge-Kutta method, never above the
 * ceiling; an upshift begins where its speed is reached and takes its time without drive.
 *
 * @source forward pass after Kapania, Subosits and Gerdes, ASME J. Dyn. Sys. Meas. Control 138(9) 091005, 2016
 */
export function accelerate(model: DriveModel, pass: ForwardPass): DrivenStretch {
  const points: DrivePoint[] = [startOf(model, pass)];
  const upshifts: Upshift[] = [];
  for (const stopM of stopsOf(pass)) {
    for (let last = lastOf(points); last.sM < stopM; last = lastOf(points)) {
      const gear = last.gear ?? pass.gear;
      const isDue = last.speedMps ** 2 >= model.upshiftSquared(gear) * (1 - 1e-12);
      if (!isDue) points.push(drivenTo(model, last, stopM));
      else {
        upshifts.push({ atM: last.sM, fromGear: gear, toGear: gear + 1, speedMps: last.speedMps });
        points.push(...shiftFrom(model, last, gear + 1, pass.toM));
      }
    }
  }
  return { points, upshifts };
}

function startOf(model: DriveModel, { fromM, fromMps, gear }: ForwardPass): DrivePoint {
  const accelerationMps2 = model.accelerationMps2(fromM, fromMps ** 2, gear);
  return { sM: fromM, timeS: 0, speedMps: fromMps, accelerationMps2, gear };
}

function lastOf(points: readonly DrivePoint[]): DrivePoint {
  return points[points.length - 1] as DrivePoint;
}

/** Ends of the steps: even between the joints, the end of the pass last. */
function stopsOf({ fromM, toM, jointsM, stepM }: ForwardPass): number[] {
  const joints = [...jointsM.filter((at) => at > fromM && at < toM), toM].sort((a, b) => a - b);
  let from = fromM;
  return joints.flatMap((joint) => {
    const count = Math.max(1, Math.ceil((joint - from) / stepM));
    const start = from;
    from = joint;
    return Array.from({ length: count }, (_, i) =>
      i + 1 === count ? joint : start + ((joint - start) * (i + 1)) / count,
    );
  });
}

/** The next point in gear: at the stop, or before it where the speed of the upshift is reached. */
function drivenTo(model: DriveModel, from: DrivePoint, stopM: number): DrivePoint {
  const gear = from.gear as number;
  const wUp = model.upshiftSquared(gear);
  const whole = stopM - from.sM;
  const reached = stepSquared(model, from, whole);
  const most = model.ceiling(stopM);
  if (Math.min(reached, most) <= wUp) return pointAt(model, from, stopM, Math.min(reached, most));
  let [low, high] = [0, whole];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    if (stepSquared(model, from, middle) < wUp) low = middle;
    else high = middle;
  }
  return pointAt(model, from, from.sM + high, wUp);
}

/** Squared speed after a step of some length in gear. */
function stepSquared(model: DriveModel, { sM, speedMps, gear }: DrivePoint, h: number): number {
  const w = speedMps ** 2;
  const slope = (at: number, squared: number): number =>
    2 * model.accelerationMps2(at, squared, gear);
  const k1 = slope(sM, w);
  const k2 = slope(sM + h / 2, w + (h / 2) * k1);
  const k3 = slope(sM + h / 2, w + (h / 2) * k2);
  const k4 = slope(sM + h, w + h * k3);
  return w + (h / 6) * (k1 + 2 * k2 + 2 * k3 + k4);
}

function pointAt(model: DriveModel, from: DrivePoint, sM: number, w: number): DrivePoint {
  const accelerationMps2 = model.accelerationMps2(sM, w, from.gear);
  const speedMps = Math.sqrt(w);
  const timeS =
    from.timeS +
    travelTimeS(
      sM - from.sM,
      { speedMps: from.speedMps, decelerationMps2: -from.accelerationMps2 },
      { speedMps, decelerationMps2: -accelerationMps2 },
    );
  return { sM, timeS, speedMps, accelerationMps2, gear: from.gear };
}

/** The points of an upshift, integrated over its time by the midpoint rule, cut off at the end of the pass. */
function shiftFrom(
  model: DriveModel,
  from: DrivePoint,
  toGear: number,
  endM: number,
): DrivePoint[] {
  const points: DrivePoint[] = [];
  const h = model.shiftS / SHIFT_STEPS;
  let last: DrivePoint = { ...from, gear: null };
  for (let i = 0; i < SHIFT_STEPS && last.sM < endM; i++) {
    last = coasted(model, last, h, endM);
    points.push(last);
  }
  const { sM, speedMps } = last;
  const accelerationMps2 = model.accelerationMps2(sM, speedMps ** 2, toGear);
  return [...points.slice(0, -1), { ...last, gear: toGear, accelerationMps2 }];
}

function coasted(model: DriveModel, from: DrivePoint, h: number, endM: number): DrivePoint {
  const rate = (sM: number, v: number): number => model.accelerationMps2(sM, v * v, null);
  const a = rate(from.sM, from.speedMps);
  const middleMps = from.speedMps + (a * h) / 2;
  const middle = rate(from.sM + (from.speedMps * h) / 2, middleMps);
  const share = Math.min(1, (endM - from.sM) / (middleMps * h));
  const sM = share < 1 ? endM : from.sM + middleMps * h;
  const speedMps = Math.min(from.speedMps + middle * h * share, Math.sqrt(model.ceiling(sM)));
  const accelerationMps2 = rate(sM, speedMps);
  return { sM, timeS: from.timeS + h * share, speedMps, accelerationMps2, gear: null };
}
