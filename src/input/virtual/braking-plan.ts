import type { BrakingIdea } from './braking-idea.ts';
import type { Reapplication, RepErrors } from './rep-errors.ts';

/** What the foot is going to do: an idea with this rep's errors. Seconds from the first touch of the brake. */
export interface BrakingPlan {
  levelAt(timeS: number): number;
  readonly endS: number;
}

/**
 * Bends an idea by the errors: the rise is stretched by its own ratio, the release starts late or early and runs at
 * another rate, what lies between is stretched to fit, and everything is heavier or lighter.
 */
export function planBraking(idea: BrakingIdea, errors: RepErrors): BrakingPlan {
  const { timingS, timeRatio, amountRatio, riseRatio, reapplication } = errors;
  const peakS = idea.peakS * riseRatio;
  const releaseS = Math.max(peakS + SHORTEST_HOLD_S, idea.startOfReleaseS + timingS);
  const meantS = (timeS: number) => {
    if (timeS < peakS) return timeS / riseRatio;
    if (timeS >= releaseS) return idea.startOfReleaseS + (timeS - releaseS) / timeRatio;
    const share = (timeS - peakS) / (releaseS - peakS);
    return idea.peakS + share * (idea.startOfReleaseS - idea.peakS);
  };
  return {
    levelAt: (timeS) =>
      amountRatio * idea.levelAt(meantS(timeS)) + bump(reapplication, timeS - releaseS),
    endS: releaseS + timeRatio * (idea.brakeOffS - idea.startOfReleaseS),
  };
}

const SHORTEST_HOLD_S = 0.02;

/** One smooth movement up and down again. */
function bump(reapplication: Reapplication | null, timeS: number): number {
  if (reapplication === null) return 0;
  const { atS, lengthS, heightLevel } = reapplication;
  const share = (timeS - atS) / lengthS;
  return share > 0 && share < 1 ? (heightLevel * (1 - Math.cos(2 * Math.PI * share))) / 2 : 0;
}
