import { releaseShare } from './release-shape.ts';
import { riseAlong } from './rise-squeeze.ts';
import type { LevelPhases } from './target-spec.ts';

/** Where the phases end, in seconds or metres after the start of the rise. */
interface PhaseEnds {
  readonly rise: number;
  readonly hold: number;
  /** Same as `hold` without a bleed. This is the start of release. */
  readonly bleed: number;
  readonly release: number;
}

export function phaseEnds({ rise, hold, bleed, release }: LevelPhases): PhaseEnds {
  const holdEnd = rise.length + hold;
  const bleedEnd = holdEnd + (bleed?.length ?? 0);
  return { rise: rise.length, hold: holdEnd, bleed: bleedEnd, release: bleedEnd + release.length };
}

/** Level at the start of release. */
export function releaseLevel({ bleed, peakLevel }: LevelPhases): number {
  return bleed?.toLevel ?? peakLevel;
}

/** Level 0..1 over the run: 0 before the start of the rise and after brake off. */
export function levelAlong(phases: LevelPhases): (run: number) => number {
  const ends = phaseEnds(phases);
  const rise = riseAlong(phases.rise.shape, phases.rise.squeeze);
  const release = releaseShare(phases.release.shape);
  const { peakLevel } = phases;
  const plateau = releaseLevel(phases);
  return (run) => {
    if (run <= 0 || run >= ends.release) return 0;
    if (run < ends.rise) return peakLevel * rise(run / ends.rise);
    if (run <= ends.hold) return peakLevel;
    if (run < ends.bleed)
      return peakLevel + ((plateau - peakLevel) * (run - ends.hold)) / (ends.bleed - ends.hold);
    return plateau * release((run - ends.bleed) / (ends.release - ends.bleed));
  };
}

/** Where the release has come down to a tenth of the level it started from. */
export function finalReleaseAt(phases: LevelPhases): number {
  const share = releaseShare(phases.release.shape);
  let above = 0;
  let below = 1;
  while (below - above > 1e-12) {
    const middle = (above + below) / 2;
    if (share(middle) > 0.1) above = middle;
    else below = middle;
  }
  return phaseEnds(phases).bleed + below * phases.release.length;
}
