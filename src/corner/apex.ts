import type { Path } from './path.ts';

/** Where a path first is at its tightest, m from turn-in. On segments the curvature is extreme at one of the ends. */
export function apexM({ segments }: Path): number {
  let [atM, best, tightest] = [0, 0, 0];
  for (const { lengthM, startCurvature, endCurvature } of segments) {
    for (const [sM, curvature] of [
      [atM, startCurvature],
      [atM + lengthM, endCurvature],
    ] as const) {
      if (Math.abs(curvature) <= tightest * (1 + 1e-9)) continue;
      [best, tightest] = [sM, Math.abs(curvature)];
    }
    atM += lengthM;
  }
  return best;
}
