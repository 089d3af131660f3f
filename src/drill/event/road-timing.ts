import { LEAD_IN_S } from '../../live/live-zone.ts';
import type { RepTiming } from '../drill-setup.ts';
import { AFTER_OFF_S } from '../live/after-off-s.ts';
import { ARM_S } from '../stages.ts';

/**
 * What of the road to the next zone is driven by the drill itself: the end of the rep is recorded after brake off, the
 * foot has to be off for a moment, and the car rolls towards the brake point.
 */
const DRIVEN_S = AFTER_OFF_S + ARM_S + LEAD_IN_S;

/** The least road that the drill can keep between two zones: its result has to be held back. */
export function shortestGapS({ holdS }: Pick<RepTiming, 'holdS'>): number {
  return DRIVEN_S + holdS;
}

/**
 * How long a result stands alone and how long the rest is, so that the next brake point comes `gapS` after brake off.
 * On a short road the result is shown for less long; a shorter one than `shortestGapS` is driven in that.
 *
 * @param holdS how long this result is held back
 */
export function roadTiming(
  gapS: number,
  holdS: number,
  { showS: usualShowS }: Pick<RepTiming, 'showS'>,
): Pick<RepTiming, 'showS' | 'restS'> {
  const leftS = Math.max(0, gapS - shortestGapS({ holdS }));
  const showS = Math.min(usualShowS, leftS);
  return { showS, restS: leftS - showS };
}
