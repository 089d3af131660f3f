import type { Path } from './path.ts';

export interface PlanPoint {
  readonly sM: number;
  readonly xM: number;
  readonly yM: number;
  /** Angle from the first tangent, rad, positive to the left. */
  readonly headingRad: number;
}

/** Abscissae and weights of three-point Gauss-Legendre quadrature on 0..1 (Abramowitz and Stegun, table 25.4). */
const GAUSS: readonly (readonly [number, number])[] = [
  [0.5 - Math.sqrt(15) / 10, 5 / 18],
  [0.5, 4 / 9],
  [0.5 + Math.sqrt(15) / 10, 5 / 18],
];

/** Coordinates of a path, starting at the origin along x, at equal steps of about `stepM`. */
export function planView(path: Path, stepM: number): PlanPoint[] {
  const count = Math.max(1, Math.round(path.lengthM / stepM));
  const step = path.lengthM / count;
  const points: PlanPoint[] = [{ sM: 0, xM: 0, yM: 0, headingRad: 0 }];
  let { xM, yM, headingRad } = points[0] as PlanPoint;
  for (let i = 0; i < count; i++) {
    const from = i * step;
    const start = headingRad;
    for (const [at, weight] of GAUSS) {
      const heading = start + headingChange(path, from, at * step);
      xM += weight * step * Math.cos(heading);
      yM += weight * step * Math.sin(heading);
    }
    headingRad = start + headingChange(path, from, step);
    points.push({ sM: from + step, xM, yM, headingRad });
  }
  return points;
}

/** Integral of the curvature over a short stretch. */
function headingChange(path: Path, fromM: number, lengthM: number): number {
  let sum = 0;
  for (const [at, weight] of GAUSS) sum += weight * path.curvatureAt(fromM + at * lengthM);
  return sum * lengthM;
}
