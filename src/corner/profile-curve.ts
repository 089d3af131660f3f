import type { ProfilePoint } from './speed-profile.ts';

/** A solved profile as functions of place: squared speed by cubic Hermite interpolation, the rest linearly. */
export interface ProfileCurve {
  readonly fromM: number;
  readonly toM: number;
  speedMps(sM: number): number;
  brakeForceN(sM: number): number;
  decelerationMps2(sM: number): number;
  /** The last place at which the speed is still at least this one, m; `fromM` where it never is. */
  placeOf(speedMps: number): number;
}

/** @param points in driving order, at least two */
export function profileCurve(points: readonly ProfilePoint[]): ProfileCurve {
  const last = points.length - 2;
  let found = 0;
  // Whoever goes along a profile asks for neighbours: it looks from where it last was.
  const indexAt = (sM: number): number => {
    while (found < last && (points[found + 1] as ProfilePoint).sM <= sM) found++;
    while (found > 0 && (points[found] as ProfilePoint).sM > sM) found--;
    return found;
  };
  const linear =
    (of: (point: ProfilePoint) => number) =>
    (sM: number): number => {
      const i = indexAt(sM);
      const [a, b] = [points[i] as ProfilePoint, points[i + 1] as ProfilePoint];
      return of(a) + (of(b) - of(a)) * shareOf(a, b, sM);
    };
  return {
    fromM: (points[0] as ProfilePoint).sM,
    toM: (points[points.length - 1] as ProfilePoint).sM,
    speedMps: (sM) => {
      const i = indexAt(sM);
      const [a, b] = [points[i] as ProfilePoint, points[i + 1] as ProfilePoint];
      return Math.sqrt(hermite(a, b, shareOf(a, b, sM)));
    },
    brakeForceN: linear((point) => point.brakeForceN),
    decelerationMps2: linear((point) => point.decelerationMps2),
    placeOf: (speedMps) => {
      const i = points.findLastIndex((point) => point.speedMps >= speedMps);
      const [a, b] = [points[i], points[i + 1]];
      if (a === undefined || b === undefined) return (a ?? (points[0] as ProfilePoint)).sM;
      return placeWithin(a, b, speedMps ** 2);
    },
  };
}

/** How far between two neighbours a place is, 0..1. */
function shareOf(a: ProfilePoint, b: ProfilePoint, sM: number): number {
  return Math.min(1, Math.max(0, (sM - a.sM) / (b.sM - a.sM)));
}

/** Bisection on the cubic between two neighbours whose squared speeds enclose `w`. */
function placeWithin(a: ProfilePoint, b: ProfilePoint, w: number): number {
  let [low, high] = [0, 1];
  for (let i = 0; i < 40; i++) {
    const middle = (low + high) / 2;
    if (hermite(a, b, middle) >= w) low = middle;
    else high = middle;
  }
  return a.sM + low * (b.sM - a.sM);
}

function hermite(a: ProfilePoint, b: ProfilePoint, t: number): number {
  const h = b.sM - a.sM;
  const slopeA = -2 * a.decelerationMps2 * h;
  const slopeB = -2 * b.decelerationMps2 * h;
  const u = 1 - t;
  return (
    a.speedMps ** 2 * (1 + 2 * t) * u * u +
    b.speedMps ** 2 * t * t * (3 - 2 * t) +
    slopeA * t * u * u -
    slopeB * t * t * u
  );
}
