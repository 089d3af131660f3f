import { addSample, averageErrorLevel, errorLevel, NO_DEVIATION } from './deviation.ts';
import { RATE_HZ } from './scoring-filter.ts';
import type { TargetReference } from './target-reference.ts';

/** How far a release was from its target over the release window. */
interface ReleaseErrors {
  readonly releaseErrorLevel: number;
  readonly averageErrorLevel: number;
  /** Share of the window inside the corridor. */
  readonly inCorridor: number;
}

/** @param levels the rep on the target's grid. */
export function releaseErrors(
  levels: Float64Array,
  { target, originS, levels: aim, release }: TargetReference,
): ReleaseErrors {
  let deviation = NO_DEVIATION;
  let inside = 0;
  for (let i = release.from; i <= release.to; i++) {
    deviation = addSample(deviation, levels[i]!, aim[i]!, 1 / RATE_HZ);
    const tolerance = target.corridorAt(originS + i / RATE_HZ);
    if (Math.abs(levels[i]! - aim[i]!) <= tolerance) inside += 1;
  }
  return {
    releaseErrorLevel: errorLevel(deviation) ?? 0,
    averageErrorLevel: averageErrorLevel(deviation) ?? 0,
    inCorridor: inside / (release.to - release.from + 1),
  };
}
