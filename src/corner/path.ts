/** How the curvature goes from its start to its end value within a segment. */
export type SegmentKind =
  /** Straight or arc: the curvature does not change. */
  | 'constant'
  /** Clothoid: linear in distance. */
  | 'clothoid'
  /** Raised cosine: linear nowhere and without a kink at either end, so that the brake can taper to nothing. */
  | 'smooth';

export interface Segment {
  readonly kind: SegmentKind;
  readonly lengthM: number;
  /** Curvature at both ends, 1/m, positive to the left (ISO 8855). Equal for `constant`. */
  readonly startCurvature: number;
  readonly endCurvature: number;
}

/** A driven line as curvature over distance, joined from segments. */
export interface Path {
  readonly segments: readonly Segment[];
  readonly lengthM: number;
  /** Curvature at `sM` from the start, 1/m; the end values hold outside the path. */
  curvatureAt(sM: number): number;
}

/** @throws RangeError for an empty path or a segment without length */
export function joinPath(segments: readonly Segment[]): Path {
  const first = segments[0];
  const last = segments[segments.length - 1];
  if (first === undefined || last === undefined) throw new RangeError('a path needs a segment');
  const ends: number[] = [];
  let lengthM = 0;
  for (const segment of segments) {
    if (!(segment.lengthM > 0)) throw new RangeError(`a segment of ${segment.lengthM} m`);
    lengthM += segment.lengthM;
    ends.push(lengthM);
  }
  const curvatureAt = (sM: number): number => {
    if (sM <= 0) return first.startCurvature;
    if (sM >= lengthM) return last.endCurvature;
    let index = 0;
    while (sM >= (ends[index] ?? lengthM)) index++;
    const segment = segments[index] ?? last;
    return segmentCurvature(segment, sM - ((ends[index] ?? lengthM) - segment.lengthM));
  };
  return { segments, lengthM, curvatureAt };
}

function segmentCurvature(
  { kind, lengthM, startCurvature, endCurvature }: Segment,
  sM: number,
): number {
  if (kind === 'constant') return startCurvature;
  const share = sM / lengthM;
  const blend = kind === 'clothoid' ? share : Math.sin((Math.PI * share) / 2) ** 2;
  return startCurvature + (endCurvature - startCurvature) * blend;
}
