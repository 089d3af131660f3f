import { REAPPLY_FADE_S, REAPPLY_S } from './live-score-version.ts';
import type { RepSignal } from './rep-signal.ts';
import { RATE_HZ, scoringFilter } from './scoring-filter.ts';
import type { Stretch } from './stretches.ts';

/**
 * The rep as it is scored when wheels locked: easing off is what a lock-up asks for, so from its beginning until
 * shortly after its end a foot below the limit counts as on it. More than the limit stays more.
 *
 * @param followed level of the followed target on the grid of `rep`
 */
export function easedForLockUps(
  rep: RepSignal,
  followed: Float64Array,
  lockUps: readonly Stretch[],
): RepSignal {
  if (lockUps.length === 0) return rep;
  const scored = rep.raw.map((level, i) => {
    const timeS = rep.startS + i / RATE_HZ;
    const grace = lockUps.reduce((most, lockUp) => Math.max(most, graceAt(lockUp, timeS)), 0);
    return level + grace * Math.max(0, (followed[i] ?? 0) - level);
  });
  return { ...rep, levels: scoringFilter(scored) };
}

/** 1 while the wheels are locked and the foot comes back, fading to 0 after. */
function graceAt({ fromS, toS }: Stretch, timeS: number): number {
  if (timeS < fromS) return 0;
  const overS = timeS - toS - REAPPLY_S;
  return Math.max(0, 1 - Math.max(0, overS) / REAPPLY_FADE_S);
}
