import type { Path } from './path.ts';

/** Relative difference below which two curvatures are the same radius. */
const SAME = 1e-9;

/**
 * Where the line is tighter than before and after, m from turn-in: the start of each tightest stretch. On segments the
 * curvature is extreme at one of the ends.
 */
export function apexesM(path: Path): number[] {
  const joints = jointsOf(path);
  return joints
    .filter(
      ({ tightness }, i) =>
        tightness > (joints[i - 1]?.tightness ?? 0) && tightness >= (joints[i + 1]?.tightness ?? 0),
    )
    .map(({ sM }) => sM);
}

/** The first apex at the smallest radius, m from turn-in; turn-in itself on a straight. */
export function apexM(path: Path): number {
  const tightness = (sM: number): number => Math.abs(path.curvatureAt(sM));
  return apexesM(path).reduce(
    (best, sM) => (tightness(sM) > tightness(best) * (1 + SAME) ? sM : best),
    apexesM(path)[0] ?? 0,
  );
}

interface Joint {
  readonly sM: number;
  /** Curvature without its sign. */
  readonly tightness: number;
}

/** Ends of the segments, an arc as its start alone. */
function jointsOf({ segments }: Path): Joint[] {
  const joints: Joint[] = [];
  let sM = 0;
  const add = (curvature: number): void => {
    const tightness = Math.abs(curvature);
    const last = joints[joints.length - 1];
    if (last !== undefined && Math.abs(tightness - last.tightness) <= SAME * tightness) return;
    joints.push({ sM, tightness });
  };
  for (const { lengthM, startCurvature, endCurvature } of segments) {
    add(startCurvature);
    sM += lengthM;
    add(endCurvature);
  }
  return joints;
}
