import type { TextUnits } from '../unit-text.ts';
import { gripFault } from './describe-live.ts';
import { type Fault, fault } from './fault.ts';
import type { RepScore } from './rep-score.ts';
import { RATE_RATIO_LIMITS, REAPPLIED_LIMITS } from './score-version.ts';

/** What kept a release from being smooth: wheels beyond their grip, a second push, or a step; null for nothing. */
export function smoothFault(outcome: RepScore, units: TextUnits): Fault | null {
  const { reapplications, rateRatio, live, parts } = outcome;
  const grip = live == null ? null : gripFault(live, parts.smooth, units);
  if (grip !== null) return grip;
  if (wentBack(outcome)) {
    return fault(`back on the brake ${times(reapplications)} during the release`, 'back', 'on');
  }
  if (rateRatio === null || rateRatio <= RATE_RATIO_LIMITS.full) return null;
  return stepFault(rateRatio);
}

/** True where the pressure went back up by more than full marks allow. */
export function wentBack({ reapplied, reapplications }: RepScore): boolean {
  return reapplied > REAPPLIED_LIMITS.full && reapplications > 0;
}

/** True for a release so steep that it was none: its time or weight would name what is not there. */
export function isStep(steepestRatio: number): boolean {
  return steepestRatio >= RATE_RATIO_LIMITS.none;
}

export function stepFault(steepestRatio: number): Fault {
  const words = `released in a step, ${steepestRatio.toFixed(1)} times as steep as the target`;
  return fault(words, 'in a', 'step');
}

function times(count: number): string {
  if (count === 1) return 'once';
  return count === 2 ? 'twice' : `${count} times`;
}
